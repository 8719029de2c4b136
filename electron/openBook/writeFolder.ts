import { randomBytes } from 'node:crypto'
import { lstat, mkdir, open, rename, rm, stat } from 'node:fs/promises'
import { dirname, isAbsolute, join } from 'node:path'
import { isSafePlace } from '../../shared/openBook/safeName.ts'
import { bad, good, type Result } from '../../shared/problem.ts'
import type { OpenFile } from './bookFiles.ts'
import type { Pace } from './pace.ts'

/** Whether the folder named is one that is there, written whole. */
export async function folderThere(folder: string): Promise<Result<string>> {
  const found = isAbsolute(folder) && (await stat(folder).catch(() => undefined))
  if (found && found.isDirectory()) return good(folder)
  return bad({
    code: 'refused',
    field: 'folder',
    message: `There is no folder ‘${folder.slice(0, 200)}’ on this machine. Write the whole of where it is, from the first folder on.`,
  })
}

/** Forces a folder's entries onto the disk. Windows keeps them with the files and can't be asked. */
async function forceFolder(folder: string): Promise<void> {
  if (process.platform === 'win32') return
  const handle = await open(folder, 'r')
  await handle.sync().finally(() => handle.close())
}

async function writeFile(path: string, pieces: OpenFile['pieces'], pace: Pace): Promise<void> {
  const handle = await open(path, 'wx')
  try {
    let held: string[] = []
    for (const piece of pieces) {
      if (typeof piece !== 'string') await handle.write(piece)
      else if (held.push(piece) >= 200) {
        await handle.write(held.join(''))
        held = []
      }
      await pace.breathe()
    }
    if (held.length > 0) await handle.write(held.join(''))
  } finally {
    await handle.close()
  }
}

/** Files forced to the disk at one time: together they take little longer than one. */
const forcedAtOnce = 16

async function forceFiles(paths: readonly string[], pace: Pace): Promise<void> {
  for (let from = 0; from < paths.length; from += forcedAtOnce) {
    await Promise.all(
      paths.slice(from, from + forcedAtOnce).map(async (path) => {
        const handle = await open(path, 'r+')
        await handle.sync().finally(() => handle.close())
      }),
    )
    await pace.breathe()
  }
}

type Written = { files: number; damaged: string[] }

async function writeAll(within: string, files: Iterable<OpenFile>, pace: Pace): Promise<Written> {
  const folders = new Set([within])
  const paths: string[] = []
  const told: string[] = []
  for (const { place, pieces, damaged } of files) {
    if (damaged !== undefined) told.push(damaged)
    if (!isSafePlace(place)) throw new Error(`a file would go to '${place}'`)
    const path = join(within, ...place.split('/'))
    for (let folder = dirname(path); !folders.has(folder); folder = dirname(folder)) folders.add(folder)
    await mkdir(dirname(path), { recursive: true })
    await writeFile(path, pieces, pace)
    paths.push(path)
    pace.work.done += 1
    await pace.breathe()
  }
  await forceFiles(paths, pace)
  for (const folder of folders) await forceFolder(folder)
  return { files: pace.work.done, damaged: told }
}

const isThere = (path: string): Promise<boolean> =>
  lstat(path).then(
    () => true,
    () => false,
  )

/** Gives the finished folder its name: the one wanted, or `… (2)` and on where that is taken. Nothing is ever written over. */
async function giveName(unfinished: string, parent: string, name: string): Promise<string> {
  for (let turn = 1; ; turn += 1) {
    const folder = join(parent, turn === 1 ? name : `${name} (${turn})`)
    if (await isThere(folder)) continue
    await rename(unfinished, folder)
    await forceFolder(parent)
    return folder
  }
}

/**
 * Writes files into a new folder inside another: under a temporary name, all of it forced to the disk, and only the whole of it gets its
 * name. A power cut, a full disk or a person who stops it leaves no folder of that name. damaged: the papers that aren't what was issued any more.
 */
export async function writeFolder(
  { parent, name }: { parent: string; name: string },
  files: Iterable<OpenFile>,
  pace: Pace,
): Promise<Written & { folder: string }> {
  const unfinished = join(parent, `${name}.unfinished-${randomBytes(4).toString('hex')}`)
  await mkdir(unfinished)
  try {
    const written = await writeAll(unfinished, files, pace)
    return { folder: await giveName(unfinished, parent, name), ...written }
  } catch (error) {
    await rm(unfinished, { recursive: true, force: true })
    throw error
  }
}
