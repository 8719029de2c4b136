import { writeSync } from 'node:fs'
import Sqlite from 'better-sqlite3'
import { openedBook } from '../../electron/openedBook.ts'
import { plainBenchPaper, plainCard, plainQuotation } from '../handlers/opened.ts'

/**
 * A program of its own that makes copies, or opens one in the book's place, until it is killed: `node keepingWriter.ts HOW BOOK STICK COPY`. HOW is 'copy',
 * 'restore', or 'held': a restore while another program looks into the book. Its clock stands still, so that the names of copies are known. Says 'begun' as each round begins, and each job and copy once it was answered.
 */
const [how = '', path = '', folder = '', name = ''] = process.argv.slice(2)
const say = (words: object): void => void writeSync(1, `${JSON.stringify(words)}\n`)
const book = await openedBook({
  ...{ path, now: () => '2026-03-02T08:00:00.000Z', print: null, empty: true },
  log: (line) => void process.stderr.write(`${line}\n`),
  ...{ makeCard: plainCard, makeQuotation: plainQuotation, makeBenchPaper: plainBenchPaper },
})

async function ask(request: string, payload: object): Promise<unknown> {
  const reply = await book.answer(request, payload)
  if (!reply.ok) throw new Error(`${request}: ${JSON.stringify(reply.problems)}`)
  return reply.value
}

/** Looks into the book and goes on looking, so that what is last written stays in its own file. */
function look(): Sqlite.Database {
  const other = new Sqlite(path, { readonly: true })
  other.exec('BEGIN')
  other.prepare('SELECT count(*) FROM jobs').get()
  return other
}

const looker = how === 'held' ? look() : null
// Held to the end: one that nobody holds is cleared away and shuts the book behind itself.
process.once('exit', () => looker?.close())
// By itself it ends after a minute: whoever waits in vain for a step to kill it at hears of it.
for (let round = 1; performance.now() < 60_000; round += 1) {
  say({ begun: round })
  const title = `Round ${round}`
  await ask('jobs.create', { customerName: 'Peg Sash', town: 'Nether Test', phone: '', title, due: null })
  say({ job: title })
  if (how === 'copy') {
    say({ away: await ask('keeping.backUp', { folder }) })
    say({ copy: await ask('keeping.copy', {}) })
  } else {
    await ask('keeping.restore', { name })
    say({ restored: round })
  }
}
process.exit(3)
