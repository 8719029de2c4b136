import { existsSync, readdirSync, renameSync, rmSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { forceFolderToDisk } from '../verifiedCopy.ts'
import { hashOfFile } from './byPieces.ts'
import { copiesFolder, readCopyName } from './copyNames.ts'

/** Whether two names lead to one file. */
function oneFile(one: string, other: string): boolean {
  const [a, b] = [one, other].map((path) => statSync(path, { bigint: true, throwIfNoEntry: false }))
  return a !== undefined && b !== undefined && a.nlink > 1n && a.ino === b.ino && a.dev === b.dev
}

const asideIn = (folder: string): string[] =>
  readdirSync(folder).filter((file) => {
    const why = readCopyName(file.replace(/-wal$/, ''))?.why
    return why === 'replaced' || why === 'damaged'
  })

const holdsAnything = (path: string): boolean => (statSync(path, { throwIfNoEntry: false })?.size ?? 0) > 0

/** Where the disk knows no second names the old book was kept as a twin: its last pages belong to the book as well. */
const isTwin = (kept: string, bookPath: string): boolean =>
  existsSync(`${bookPath}.coming`) &&
  statSync(kept).size === statSync(bookPath).size &&
  hashOfFile(kept) === hashOfFile(bookPath)

/**
 * Takes back a change of books that was cut off after the old one had been put aside and before the new one had the name; call it before the book is
 * opened. What was last written to the old book is put beside it again if it had gone, and the second name is taken off it: it would lead to the very book
 * that is written in, and so be no copy of anything. Does nothing where nothing was cut off.
 */
export function takeBackCutRestore(bookPath: string): void {
  const folder = copiesFolder(bookPath)
  if (!existsSync(folder) || !statSync(bookPath, { throwIfNoEntry: false })?.isFile()) return
  for (const file of asideIn(folder)) {
    const kept = join(folder, file)
    if (file.endsWith('-wal')) {
      // The pages were put aside and the book not yet: they still lie beside it.
      if (!existsSync(kept.slice(0, -'-wal'.length)) && oneFile(kept, `${bookPath}-wal`)) rmSync(kept)
      continue
    }
    const second = oneFile(kept, bookPath)
    const lastPages = holdsAnything(`${kept}-wal`)
    if (lastPages && !existsSync(`${bookPath}-wal`) && (second || isTwin(kept, bookPath))) {
      renameSync(`${kept}-wal`, `${bookPath}-wal`)
      forceFolderToDisk(bookPath)
      rmSync(kept)
    } else if (second) for (const part of ['', '-wal', '-shm']) rmSync(`${kept}${part}`, { force: true })
  }
}
