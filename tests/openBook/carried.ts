import { readdirSync, readFileSync, statSync } from 'node:fs'
import { join, relative } from 'node:path'
import type { Opened } from '../handlers/opened.ts'
import { opened } from '../handlers/opened.ts'
import { openedBook, temporaryFolder } from '../db/temporaryBook.ts'

/** Every file below a folder by its place, with its bytes. */
export function filesIn(folder: string): Map<string, Buffer> {
  const found = new Map<string, Buffer>()
  const walk = (at: string): void => {
    for (const name of readdirSync(at).sort()) {
      const path = join(at, name)
      if (statSync(path).isDirectory()) walk(path)
      else found.set(relative(folder, path), readFileSync(path))
    }
  }
  walk(folder)
  return found
}

/** Takes a book out into a folder of its own and gives that folder. */
export async function takenOut({ ask }: Opened): Promise<string> {
  const out = await ask('book.takeOut', { folder: temporaryFolder() })
  if (!out) throw new Error('put away')
  return out.folder
}

/** A fresh book, with nothing in it but what a new one has. */
export const freshBook = (): Opened => opened({ book: openedBook() })

/** Looks into a folder and brings it in. */
export async function broughtIn({ ask }: Opened, folder: string, replace = false): Promise<void> {
  await ask('book.lookInto', { folder })
  await ask('book.bringIn', { folder, replace })
}
