import { closeSync, existsSync, openSync, readSync, statSync } from 'node:fs'
import Sqlite from 'better-sqlite3'
import { asBookProblem, BookProblem, withPlace } from './bookProblem.ts'
import { bookMark, connect, type Connection } from './connection.ts'
import { boardRoom, type BoardRoom } from './board.ts'
import { createBook } from './create.ts'
import { customersRoom, type CustomersRoom } from './customers.ts'
import { jobsRoom, type JobsRoom } from './jobs.ts'
import { keepingRoom, type KeepingRoom } from './keeping/keepingRoom.ts'
import { isLarge, refuseDamaged } from './keeping/lookThrough.ts'
import { fillWords } from './keeping/wordsAgain.ts'
import { migrate, pendingSteps, readMigrations, type Migration } from './migrate.ts'
import { notesRoom, type NotesRoom } from './notes.ts'
import { optionsRoom, type OptionsRoom } from './options.ts'
import { wholeRoom, type WholeRoom } from './openBook/whole.ts'
import { ordersRoom, type OrdersRoom } from './orders.ts'
import { papersRoom, type PapersRoom } from './papers.ts'
import { piecesRoom, type PiecesRoom } from './pieces.ts'
import { photographsRoom, type PhotographsRoom } from './photographs.ts'
import { priceReading } from './priceReading.ts'
import { priceQuestions } from './priceRows.ts'
import { pricesRoom, type PricesRoom } from './prices.ts'
import { quotationsRoom, type QuotationsRoom } from './quotations.ts'
import { rackRoom, type RackRoom } from './rack.ts'
import { clearUnfinished, risesRoom, type RisesRoom } from './rises.ts'
import { sampleRoom, type SampleRoom } from './sample.ts'
import { sectionsRoom, type SectionsRoom } from './sections.ts'
import { settingsRoom, type SettingsRoom } from './settings.ts'
import { verifiedCopy } from './verifiedCopy.ts'
import { applying } from './undo/apply.ts'
import { deedStatements } from './undo/deedRows.ts'
import { keepDeeds, noDeeds, type Deeds } from './undo/keepDeeds.ts'
import { undoRoom, type UndoRoom } from './undo/undoRoom.ts'
import { watchedTables } from './undo/watched.ts'
import { usualGatesRoom, type UsualGatesRoom } from './usualGates.ts'
import { happenedRoom, type HappenedRoom } from './whatHappened.ts'
import { workDoneRoom, type WorkDoneRoom } from './workDone.ts'
import { yearRoom, type YearRoom } from './year.ts'

/**
 * The open job book. `together` makes several writings one: all of them are kept or none. `copy` is the path of the verified copy
 * made because the book's layout was brought up to date just now, else null. lookedThrough: every page was looked at for damage; a large book's must be still.
 */
export type Book = {
  path: string
  copy: string | null
  lookedThrough: boolean
  jobs: JobsRoom
  board: BoardRoom
  year: YearRoom
  pieces: PiecesRoom
  customers: CustomersRoom
  papers: PapersRoom
  notes: NotesRoom
  photographs: PhotographsRoom
  happened: HappenedRoom
  settings: SettingsRoom
  sections: SectionsRoom
  prices: PricesRoom
  rises: RisesRoom
  options: OptionsRoom
  quotations: QuotationsRoom
  workDone: WorkDoneRoom
  orders: OrdersRoom
  rack: RackRoom
  usualGates: UsualGatesRoom
  sample: SampleRoom
  whole: WholeRoom
  keeping: KeepingRoom
  undo: UndoRoom
  deeds: Deeds
  together: <T>(work: () => T) => T
  close: () => void
}

/**
 * now gives the time as ISO text; migrations are the program's own, and mostBeforeOpening the bytes looked through first, unless a test says otherwise.
 * deeds: keep what is done, so that it can be taken back.
 */
export type OpenOptions = {
  now: () => string
  migrations?: Migration[]
  deeds?: boolean
  mostBeforeOpening?: number
}

const signature = 'SQLite format 3\0'

/**
 * Looks at a file's first bytes before the store may touch it. SQLite would take an empty file for a fresh book, and the joiner
 * would sit before an empty job list; here it is damage. The mark stands at byte 68 of the file, four bytes, high byte first.
 */
function refuseForeign(path: string): void {
  if (!statSync(path).isFile())
    throw new BookProblem('not-a-book', 'This is not a job book but a folder or something else.')
  if (statSync(path).size === 0)
    throw new BookProblem(
      'damaged',
      'The job book is there but empty: it has been damaged. Leave it as it is and bring back a copy of it.',
    )
  const head = Buffer.alloc(100)
  const file = openSync(path, 'r')
  try {
    readSync(file, head, 0, head.length, 0)
  } finally {
    closeSync(file)
  }
  if (head.toString('latin1', 0, 16) !== signature)
    throw new BookProblem(
      'not-a-book',
      'This is not a job book, or its beginning is damaged. Bring back a copy of the book.',
    )
  if (head.readUInt32BE(68) !== bookMark)
    throw new BookProblem('not-a-book', 'This file belongs to another program; it is not a job book.')
}

/**
 * Damage shows on reading, not on opening: the pages are looked through once (about 1 ms for each MB), of a large book only the settings'. By a connection
 * that can't write, so that a book from a newer program and a damaged one stay as they are, to the byte. Gives whether all of it was looked through.
 */
function refuseUnfit(path: string, migrations: Migration[], most?: number): boolean {
  const db = new Sqlite(path, { readonly: true, fileMustExist: true })
  try {
    pendingSteps(db, migrations)
    const large = isLarge(path, most)
    refuseDamaged(db, large ? 'settings' : undefined)
    return !large
  } finally {
    db.close()
  }
}

function bringUpToDate(path: string, connection: Connection, migrations: Migration[]): string | null {
  const pending = pendingSteps(connection.db, migrations)
  const first = pending[0]
  if (!first) return null
  const stem = path.replace(/\.book$/, '')
  const before = `before-${String(first.number).padStart(4, '0')}`
  const copy = verifiedCopy(connection.db, (suffix) => `${stem}-${before}${suffix}.book`)
  migrate(connection.db, migrations)
  return copy
}

/** What opening has to do before the rooms can be made: the layout brought up to date, the words filled that a new layout left out. */
function settled(path: string, connection: Connection, migrations: Migration[]): string | null {
  const copy = bringUpToDate(path, connection, migrations)
  fillWords(connection.db)
  return copy
}

function prepared(path: string, options: OpenOptions, migrations: Migration[]): [Connection, string | null] {
  const connection = connect(path, options.now)
  try {
    return [connection, asBookProblem(() => settled(path, connection, migrations), path)]
  } catch (problem) {
    connection.close()
    throw problem
  }
}

/**
 * Opens the job book at a path, the one way in; where there is no file a new book is made. A book from an older program is brought up
 * to date after a checked copy of it has been put beside it. Throws BookProblem: 'newer', 'not-a-book', 'damaged', 'locked', 'full',
 * 'not-writable', 'disk', 'unsafe'.
 */
export function openBook(path: string, options: OpenOptions): Book {
  try {
    return opened(path, options)
  } catch (problem) {
    throw problem instanceof BookProblem ? withPlace(problem, path) : problem
  }
}

function opened(path: string, options: OpenOptions): Book {
  const migrations = options.migrations ?? readMigrations()
  const [lookedThrough, [connection, copy]] = asBookProblem(() => {
    if (!existsSync(path)) createBook(path, migrations)
    refuseForeign(path)
    const whole = refuseUnfit(path, migrations, options.mostBeforeOpening)
    return [whole, prepared(path, options, migrations)]
  }, path)
  const { watched, ...rooms } = roomsOf(connection, { path, migrations, keepsDeeds: options.deeds ?? false })
  clearAfterCut(connection)
  return { path, copy, lookedThrough, ...rooms, together: watched.write, close: connection.close }
}

/** What a power cut left of a rise that wasn't finished is cleared away before anybody adds prices. */
function clearAfterCut(connection: Connection): void {
  try {
    clearUnfinished(connection)
  } catch (problem) {
    connection.close()
    throw problem
  }
}

/** Where the open book lies and the layouts it went through. */
type Standing = { path: string; migrations: Migration[]; keepsDeeds: boolean }

/** The price book's rooms, and those that take prices out: the sample's and the whole book's. */
function priceRooms(connection: Connection, at: Standing, deeds: Deeds) {
  const ask = priceQuestions(connection)
  const reading = priceReading(connection, ask)
  const sample = sampleRoom(connection, reading.forget)
  const whole = wholeRoom(connection, { ...at, forget: reading.forget })
  return {
    forget: reading.forget,
    prices: pricesRoom(connection, ask, reading),
    rises: risesRoom(connection, ask),
    sample: { remove: () => connection.write(() => deeds.apart(sampleGone, sample.remove)) },
    whole: { ...whole, cameIn: () => deeds.apart(bookCameIn, whole.cameIn) },
  }
}

const sampleGone = {
  name: 'Sample jobs cleared away',
  why: 'The sample jobs are gone for good; they were only there to try things on.',
}
const bookCameIn = {
  name: 'A whole book brought in',
  why: 'The book that stood here before lies among the copies; open that copy to go back to it.',
}

/** Deeds kept or not, what can be taken back, and the way to the book that the rooms work by. */
function undoRooms(connection: Connection, keepsDeeds: boolean) {
  const run = deedStatements(connection)
  const tables = watchedTables(connection.db)
  const kept = keepsDeeds ? keepDeeds(connection, run, tables) : undefined
  const deeds = kept?.deeds ?? noDeeds(run, connection)
  const watched = kept?.watched ?? connection
  const { without } = deeds
  const room = (forget: () => void) =>
    undoRoom({ connection: watched, run, apply: applying(watched, tables), without, forget })
  return { watched, deeds, room }
}

/** A way to the book for what the program notes of its own accord: nothing that a person did, so no deed. */
const besides = (connection: Connection, { without }: Deeds): Connection => ({
  ...connection,
  write: (work) => without(() => connection.write(work)),
})

/**
 * The rooms of an open book. Their questions are the program's own and tested, so one that the book can't take means a book whose
 * layout isn't what its number says: one that was made by a trial of the program, or tampered with.
 */
function roomsOf(opened: Connection, at: Standing) {
  try {
    const { watched: connection, deeds, room } = undoRooms(opened, at.keepsDeeds)
    const { forget, ...priced } = priceRooms(connection, at, deeds)
    const customers = customersRoom(connection)
    const quotations = quotationsRoom(connection)
    return {
      ...priced,
      watched: connection,
      deeds,
      undo: room(forget),
      quotations,
      options: optionsRoom(connection),
      workDone: workDoneRoom(connection, quotations),
      orders: ordersRoom(connection),
      rack: rackRoom(connection),
      customers,
      jobs: jobsRoom(connection, customers),
      board: boardRoom(connection),
      year: yearRoom(connection),
      pieces: piecesRoom(connection),
      papers: papersRoom(connection),
      notes: notesRoom(connection),
      photographs: photographsRoom(connection),
      happened: happenedRoom(connection),
      settings: settingsRoom(connection),
      sections: sectionsRoom(connection),
      usualGates: usualGatesRoom(connection),
      keeping: keepingRoom(besides(connection, deeds), at.path),
    }
  } catch (problem) {
    opened.close()
    throw new BookProblem(
      'damaged',
      'The job book isn’t laid out as this program keeps one. Leave it as it is and bring back a copy of it.',
      problem,
    )
  }
}
