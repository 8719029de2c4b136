import { constants } from 'node:fs'
import { lstat, open } from 'node:fs/promises'
import { join } from 'node:path'
import { bad, good, type Problem, type Result } from '../../shared/problem.ts'

const mega = 1024 * 1024

/** The most that files of each ending may weigh, bytes: far past any book's. */
const mostBytes: Readonly<Record<string, number>> = {
  json: 64 * mega,
  csv: 256 * mega,
  pdf: 64 * mega,
  jpg: 2 * mega,
}

const refused = (place: string, message: string): Problem => ({ code: 'refused', field: place, message })

/** What stands in the way of reading a place: a folder or a file that isn't there, or leads elsewhere. */
async function standsInWay(root: string, place: string): Promise<Problem | undefined> {
  const parts = place.split('/')
  for (const [at] of parts.entries()) {
    const found = await lstat(join(root, ...parts.slice(0, at + 1))).catch(() => undefined)
    if (!found) return refused(place, 'the file is missing; accepted is a folder with all its files')
    const isLast = at === parts.length - 1
    if (found.isSymbolicLink())
      return refused(place, 'it leads to another place; accepted are files in this folder only')
    if (isLast ? !found.isFile() : !found.isDirectory())
      return refused(
        place,
        `it is no ${isLast ? 'file' : 'folder'}; accepted is a folder as it was taken out`,
      )
  }
  return undefined
}

/** Reads one file of a folder from outside: never through a link, never more than its kind may weigh. */
export async function readPlace(root: string, place: string): Promise<Result<Buffer>> {
  const problem = await standsInWay(root, place)
  if (problem) return bad(problem)
  const most = mostBytes[place.slice(place.lastIndexOf('.') + 1)] ?? mega
  const handle = await open(join(root, ...place.split('/')), constants.O_RDONLY | (constants.O_NOFOLLOW ?? 0))
  try {
    const { size } = await handle.stat()
    if (size > most)
      return bad(
        refused(place, `it weighs ${Math.ceil(size / mega)} MB, accepted is up to ${most / mega} MB`),
      )
    return good(await handle.readFile())
  } finally {
    await handle.close()
  }
}

/** The words of a file; a problem where they aren't written as ours are. */
export function wordsOf(place: string, bytes: Buffer): Result<string> {
  try {
    return good(new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes))
  } catch {
    return bad(refused(place, 'it can’t be read as words; accepted is a file as it was taken out'))
  }
}
