import { existsSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import Sqlite from 'better-sqlite3'
import { openedBook } from '../../electron/openedBook.ts'
import { plainBenchPaper, plainCard, plainQuotation } from '../handlers/opened.ts'

/**
 * A program of its own on a book whose disk fails it: `node diskJob.ts BOOK STICK [short]`. Writes notes into job 1 until one is refused (short: none), then tries the
 * other paths that write, and prints what each answered, what stands in the book afterwards, and every file with its size.
 */
type Reply = { ok: boolean; problems?: { code: string; message: string }[]; value?: unknown }

const [path = '', stick = '', short] = process.argv.slice(2)
const log = (line: string): void => void process.stderr.write(`${line}\n`)
const book = await openedBook({
  ...{ path, now: () => new Date().toISOString(), log, print: null, empty: true },
  ...{ makeCard: plainCard, makeQuotation: plainQuotation, makeBenchPaper: plainBenchPaper },
})
const ask = async (name: string, payload: unknown): Promise<Reply> =>
  (await book.answer(name, payload)) as Reply

const kept: number[] = []
const refused: Reply[] = []
for (let turn = 1; turn <= (short ? 0 : 600) && refused.length === 0; turn += 1) {
  const notes = `${turn} ${'x'.repeat(15_000)}`
  const reply = await ask('jobs.change', { id: 1, changes: [{ path: 'notes', value: notes }] })
  if (reply.ok) kept.push(turn)
  else refused.push(reply)
}

/** Fills up what is left, down to the last piece. */
function fillUp(): void {
  const ballast = join(dirname(path), 'ballast')
  for (let piece = 0; piece < 10_000; piece += 1)
    try {
      writeFileSync(ballast, Buffer.alloc(1024, 1), { flag: 'a' })
    } catch {
      return
    }
}
if (!short) fillUp()
const create = { customerName: 'Peg', town: 'y'.repeat(300), phone: '', title: 'z'.repeat(300), due: null }
const copy = '2026-02-28 17.00.00 closing.book'
const others = {
  'jobs.create': await ask('jobs.create', create),
  'papers.issue': await ask('papers.issue', { jobId: 2, format: 'a4', version: 3 }),
  'settings.change': await ask('settings.change', { name: 'w'.repeat(300) }),
  'keeping.copy': await ask('keeping.copy', {}),
  'keeping.backUp': await ask('keeping.backUp', { folder: stick }),
  'book.takeOut': await ask('book.takeOut', { folder: short ? stick : dirname(path) }),
  'job.takeOut': await ask('job.takeOut', { jobId: 2, papers: true }),
  'keeping.putOff': await ask('keeping.putOff', {}),
}
const notesNow = async (): Promise<number> => {
  const { value } = (await ask('jobs.open', { id: 1 })) as { value?: { notes: string } }
  return Number(value?.notes.split(' ')[0])
}
const stands = await notesNow()
const restored = await ask('keeping.restore', { name: copy })
const replies = { ...others, 'keeping.restore': restored }
rmSync(join(dirname(path), 'ballast'), { force: true })
const room = await ask('jobs.change', { id: 2, changes: [{ path: 'notes', value: 'room again' }] })
await book.close()

const filesIn = (folder: string): [string, number][] =>
  existsSync(folder)
    ? readdirSync(folder, { recursive: true, encoding: 'utf8' })
        .map((file): [string, number] => [file, statSync(join(folder, file)).size])
        .filter(([file]) => statSync(join(folder, file)).isFile())
    : []
const db = new Sqlite(path)
const sound = db.pragma('integrity_check', { simple: true })
db.close()
process.stdout.write(
  JSON.stringify({
    kept: kept.at(-1),
    refused: refused[0],
    others: replies,
    stands,
    room,
    sound,
    files: [...filesIn(dirname(path)), ...filesIn(stick)],
  }),
)
