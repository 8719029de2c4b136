import type { PapersGoneOver } from '../../shared/keeping/keepingModel.ts'
import { latestOf, type Ground } from './ground.ts'
import { watched } from './watched.ts'

const yearMs = 365 * 86_400_000

/** Goes over every issued paper, beside the window's work, and notes in the book what was found. */
export async function goOver(ground: Ground): Promise<PapersGoneOver> {
  const { desk, now } = ground
  const book = desk.book()
  const task = { bookPath: desk.path, latest: latestOf(ground) }
  const found = await watched(ground, { do: 'goOver', task })
  const papers = { at: now(), ...found }
  book.keeping.change({ papers })
  return papers
}

/** Once a year the papers are gone over by themselves. A fault is left to the log: the papers are looked at again when they are read. */
export async function goOverYearly(ground: Ground): Promise<void> {
  const { desk, now, log } = ground
  if (desk.trouble()) return
  try {
    const { papers, since } = desk.book().keeping.read()
    if (Date.parse(now()) - Date.parse(papers?.at ?? since) >= yearMs) await goOver(ground)
  } catch (problem) {
    log(`going over the papers: ${problem instanceof Error ? problem.stack : String(problem)}`)
  }
}

/** Puts a damaged paper back from a copy, and goes over them all again. */
export async function putBack(ground: Ground, paperId: number): Promise<PapersGoneOver> {
  ground.desk.book().keeping.putBack(paperId, latestOf(ground))
  return goOver(ground)
}
