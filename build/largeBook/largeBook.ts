import { createHash } from 'node:crypto'
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { inProject } from '../paths.ts'
import { fillLargeBook } from './fillLargeBook.ts'

/** Any number would do; kept, so that every run has the same book. */
export const largeBookSeed = 20261126

/** What a generated book depends on: its maker, the layout of a book and the words that jobs are found by. */
const makers = [
  ...['invented', 'course', 'gates', 'smallPdf', 'rows', 'orderRows', 'fillLargeBook'].map(
    (name) => `build/largeBook/${name}.ts`,
  ),
  'db/migrations',
  'db/search.ts',
  'db/noteWords.ts',
  'shared/job',
  'shared/gate/designModel.ts',
]

const filesOf = (path: string): string[] =>
  path.endsWith('.ts')
    ? [inProject(path)]
    : readdirSync(inProject(path))
        .sort()
        .map((name) => join(inProject(path), name))

function madeBy(): string {
  const hash = createHash('sha256')
  for (const file of makers.flatMap(filesOf)) hash.update(readFileSync(file))
  return hash.digest('hex').slice(0, 12)
}

/** The path of a book of so many invented jobs, made once for each seed and state of the program and kept in the machine's temporary folder. Never write in it: copy it first. */
export async function largeBook(count: number, seed = largeBookSeed): Promise<string> {
  const folder = join(tmpdir(), 'bracework-large-books')
  mkdirSync(folder, { recursive: true })
  const path = join(folder, `${count}-${seed}-${madeBy()}.book`)
  if (existsSync(path)) return path
  for (const old of readdirSync(folder))
    if (old.startsWith(`${count}-${seed}-`)) rmSync(join(folder, old), { force: true })
  const made = join(folder, `${process.pid}-${count}.making`)
  try {
    await fillLargeBook(made, count, seed)
    renameSync(made, path)
  } finally {
    for (const rest of ['', '-wal', '-shm']) rmSync(`${made}${rest}`, { force: true })
  }
  return path
}
