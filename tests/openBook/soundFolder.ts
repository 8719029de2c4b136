import { cpSync, mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { addSample } from '../../electron/handlers/sampleCards.ts'
import { temporaryFolder } from '../db/temporaryBook.ts'
import { opened } from '../handlers/opened.ts'
import { filesIn, takenOut } from './carried.ts'

/** A folder of the sample book, made once; each test spoils a copy of its own. */
export const made = { folder: '', holder: '', places: [] as string[] }

export async function soundFolder(): Promise<void> {
  if (made.folder !== '') return
  made.holder = mkdtempSync(join(tmpdir(), 'bracework-bad-'))
  const from = opened()
  await addSample(from)
  const folder = await takenOut(from)
  cpSync(folder, join(made.holder, 'sound'), { recursive: true })
  made.folder = join(made.holder, 'sound')
  made.places = [...filesIn(made.folder).keys()]
}

export const spoiltFolder = (): string => {
  const folder = join(temporaryFolder(), 'spoilt')
  cpSync(made.folder, folder, { recursive: true })
  return folder
}

export const placeLike = (pattern: RegExp): string => {
  const found = made.places.find((place) => pattern.test(place))
  if (!found) throw new Error(`no place like ${pattern}`)
  return found
}
export const job = () => placeLike(/^jobs\/S\//)
export const paper = () => placeLike(/^papers\/.*\.json$/)
export const pdf = () => paper().replace('.json', '.pdf')
