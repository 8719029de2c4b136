import { rmSync } from 'node:fs'
import { basename, join } from 'node:path'
import { BookProblem } from '../../db/bookProblem.ts'
import { createBook } from '../../db/create.ts'
import { listCopies, pathOfCopy } from '../../db/keeping/copies.ts'
import { copiesFolder } from '../../db/keeping/copyNames.ts'
import type { KeepingRecord } from '../../db/keeping/keepingRoom.ts'
import { replaceBook } from '../../db/keeping/replaceBook.ts'
import type { CopyReason, InsideCopy, Outcome, Salvaged } from '../../shared/keeping/keepingModel.ts'
import { wallTimeOf } from '../calendar.ts'
import { copyBook, settleIn } from './copying.ts'
import { latestOf, type Ground } from './ground.ts'
import { watched } from './watched.ts'

const counted = (count: number, one: string): string => `${count} ${one}${count === 1 ? '' : 's'}`

const keptWords = (kept: string | null): string =>
  kept === null ? '' : ` The book that was there is kept among the copies as “${basename(kept)}”.`

/** Looks a copy through, beside the window's work. */
export const lookInside = (ground: Ground, name: string): Promise<InsideCopy> =>
  watched(ground, {
    do: 'inside',
    task: { path: pathOfCopy(ground.desk.path, name), latest: latestOf(ground) },
  })

/** What the book that goes remembers of its copies; a book that can't be read remembers nothing. */
function remembered({ desk }: Ground): Partial<KeepingRecord> {
  if (desk.trouble()) return {}
  const { away, since } = desk.book().keeping.read()
  return away ? { away, since } : { since }
}

/** Puts a file in the book's place and opens it; whatever happens, a book is opened again if there is one that can be. */
async function putInPlace(
  ground: Ground,
  comes: string,
  outcome: (kept: string | null) => Outcome,
): Promise<string | null> {
  const { desk, now } = ground
  const trouble = desk.trouble()
  const memory = remembered(ground)
  const why: CopyReason = trouble && trouble.code !== 'newer' ? 'damaged' : 'replaced'
  try {
    const coming = await watched(ground, { do: 'near', task: { comes, bookPath: desk.path } })
    const kept = replaceBook({ bookPath: desk.path, coming, at: wallTimeOf(now()), why, shut: desk.shut })
    desk.open()
    if (!desk.trouble()) desk.book().keeping.change({ ...memory, outcome: outcome(kept) })
    return kept
  } finally {
    if (desk.trouble()) desk.open()
    settleIn(ground)
  }
}

/** A copy of what is open now, so that opening an earlier one can be undone; a book too damaged to copy is kept as a file all the same. */
async function copyBefore(ground: Ground): Promise<void> {
  try {
    await copyBook(ground, 'restore')
  } catch (problem) {
    if (!(problem instanceof BookProblem) || problem.code !== 'damaged') throw problem
    ground.log(`no copy before opening another: ${String(problem.cause)}`)
  }
}

/** Opens a copy in the book's place, after it has been looked through; the book that was there is kept. */
export async function restore(ground: Ground, name: string): Promise<void> {
  const inside = await lookInside(ground, name)
  if (!ground.desk.trouble()) await copyBefore(ground)
  await putInPlace(ground, pathOfCopy(ground.desk.path, name), (kept) => ({
    what: 'restored',
    sentence: `The copy “${name}” is open, with ${counted(inside.jobs, 'job')}.${keptWords(kept)}`,
  }))
}

const lostWords = (lost: number): string =>
  lost === 0
    ? ''
    : ` ${counted(lost, 'job')} could not be read; look through the list, and in an earlier copy for what is missing.`

/** How many jobs the newest copy holds that can be looked into: what was read out is held against it. */
async function jobsInLastCopy(ground: Ground): Promise<number> {
  for (const { name } of listCopies(ground.desk.path))
    try {
      return (await lookInside(ground, name)).jobs
    } catch (problem) {
      if (!(problem instanceof BookProblem)) throw problem
    }
  return 0
}

/** Reads what can be read out of the damaged book into a new one and opens that; the damaged one is kept as it was. */
export async function salvageBook(ground: Ground): Promise<Salvaged> {
  const { desk, migrations, mind } = ground
  if (!desk.trouble() && mind.fault === null)
    throw new BookProblem('refused', 'The book is sound: there is nothing to read out of it.')
  const { path, jobs, papers, ...found } = await watched(ground, {
    do: 'salvage',
    task: { bookPath: desk.path, migrations },
  })
  try {
    // A page that is gone with all its jobs answers nothing at all: the last copy knows of them.
    const lostJobs = Math.max(found.lostJobs, (await jobsInLastCopy(ground)) - jobs)
    const kept = await putInPlace(ground, path, (aside) => ({
      what: 'salvaged',
      sentence: `${counted(jobs, 'job')} and ${counted(papers, 'issued paper')} were read out of the damaged book.${lostWords(lostJobs)}${keptWords(aside)}`,
    }))
    return { jobs, papers, lostJobs, kept: kept === null ? '' : basename(kept) }
  } finally {
    rmSync(path, { force: true })
  }
}

/** Begins a fresh, empty book where the one that was there can't be opened; that one is kept. */
export async function freshBook(ground: Ground): Promise<void> {
  const { desk, migrations } = ground
  if (!desk.trouble()) throw new BookProblem('refused', 'The book is open: it needs no fresh one.')
  const made = join(copiesFolder(desk.path), 'fresh.unfinished')
  rmSync(made, { force: true })
  createBook(made, migrations)
  try {
    await putInPlace(ground, made, (kept) => ({
      what: 'fresh',
      sentence: `This is a fresh, empty book.${keptWords(kept)}`,
    }))
  } finally {
    rmSync(made, { force: true })
  }
}
