import type { JobFile } from '../../shared/openBook/jobFile.ts'
import type { Connection } from '../connection.ts'
import type { Migration } from '../migrate.ts'
import { verifiedCopy } from '../verifiedCopy.ts'
import { bringJobIn, freeNumber, type CameIn } from './jobAlone.ts'
import { snapshotOf, type Snapshot } from './snapshot.ts'
import { beginStaging, removeStaged, type Staging } from './staging.ts'

/** The book taken out whole and brought in again, and one job likewise. */
export type WholeRoom = {
  /** The newest layout this program knows, which an open book has. */
  layout: number
  /** The book as it stands now, read beside whoever works on it. */
  snapshot: () => Snapshot
  /** Begins a book apart from this one, of what files of that layout hold. */
  stage: (layout: number) => Staging
  /** How many jobs, customers, price lines, suppliers and orders of the workshop's own stand in the book: 0 for a fresh one. */
  own: () => number
  /** Names what stands in the book: another one after each writing. */
  stamp: () => string
  /** A copy of the book beside it, checked. Gives its path. */
  copy: (before: string) => string
  /** What was staged has taken the book's place, written by another connection: what was remembered of the old rows is let go. */
  cameIn: () => void
  /** Whether a job that comes in could keep this number. */
  isFree: (number: string) => boolean
  /** A job from a file comes in, all or nothing. bytes: its papers', one each. */
  bringJobIn: (file: JobFile, bytes: readonly Uint8Array[]) => CameIn
}

const ownTables = ['jobs', 'customers', 'items', 'suppliers', 'orders', 'rack_pieces']

/** The room for the whole book. forget is told that rows were replaced. */
export function wholeRoom(
  connection: Connection,
  at: { path: string; migrations: Migration[]; forget: () => void },
): WholeRoom {
  const { db, read } = connection
  const { path, migrations, forget } = at
  const staged = `${path}.coming-in`
  const own = db
    .prepare<[], number>(
      `SELECT ${ownTables.map((table) => `(SELECT count(*) FROM ${table} WHERE sample = 0)`).join(' + ')}`,
    )
    .pluck()
  const stamp = db.prepare<[], number>('SELECT total_changes()').pluck()
  removeStaged(staged)
  return {
    layout: migrations.at(-1)?.number ?? 0,
    snapshot: () => snapshotOf(path),
    stage: (layout) => beginStaging(staged, layout, migrations),
    own: () => read(() => own.get()) ?? 0,
    stamp: () => String(read(() => stamp.get())),
    copy: (before) =>
      read(() =>
        verifiedCopy(db, (suffix) => `${path.replace(/\.book$/, '')}-before-${before}${suffix}.book`),
      ),
    cameIn: forget,
    isFree: (number) => read(() => freeNumber(connection, number)) !== undefined,
    bringJobIn: (file, bytes) => bringJobIn(connection, file, bytes),
  }
}
