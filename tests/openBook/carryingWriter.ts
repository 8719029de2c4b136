import { openBook } from '../../db/open.ts'
import { dayOf } from '../../electron/calendar.ts'
import { answer } from '../../electron/handlers/answer.ts'
import type { Context } from '../../electron/handlers/context.ts'
import { makeBenchPaper } from '../../electron/makeBenchPaper.ts'
import { makeCard } from '../../electron/makeCard.ts'
import { makeQuotation } from '../../electron/makeQuotation.ts'
import { makeShelf } from '../../electron/printing/shelf.ts'

/**
 * A program of its own that takes a book out, or brings one in, until it is killed: `node carryingWriter.ts out|in BOOK FOLDER`.
 * Says 'begun' as each round begins.
 */
const [what = '', path = '', folder = ''] = process.argv.slice(2)
const now = (): string => new Date().toISOString()
const context: Context = {
  book: openBook(path, { now }),
  now,
  dayOf,
  ...{ makeCard, makeQuotation, makeBenchPaper, shelf: makeShelf(), print: null },
  log: (line) => void process.stderr.write(`${line}\n`),
  copyBefore: () => 'no copy',
}

const ask = async (name: string, payload: unknown): Promise<void> => {
  const result = await answer(context, name, payload)
  if (!result.ok) throw new Error(`${name}: ${JSON.stringify(result.problems)}`)
}

if (what === 'in') await ask('book.lookInto', { folder })
for (;;) {
  process.stdout.write('begun\n')
  if (what === 'out') await ask('book.takeOut', { folder })
  else await ask('book.bringIn', { folder, replace: true })
}
