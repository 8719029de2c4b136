import * as v from 'valibot'
import {
  copyReasons,
  type AwayCopy,
  type Outcome,
  type PapersGoneOver,
} from '../../shared/keeping/keepingModel.ts'
import type { Connection } from '../connection.ts'
import { putPaperBack } from './goOver.ts'

/** What the book remembers of its own keeping. since: when it was first opened; all times ISO. */
export type KeepingRecord = {
  since: string
  away: AwayCopy | null
  putOffUntil: string | null
  papers: PapersGoneOver | null
  outcome: Outcome | null
}

export type KeepingRoom = {
  /** What is remembered; begun on the first look. */
  read: () => KeepingRecord
  change: (some: Partial<KeepingRecord>) => void
  /** A number that is higher after any writing in this session. */
  writings: () => number
  ownJobs: () => number
  /** Puts a damaged paper back from a copy; throws BookProblem 'refused' when none holds it whole. */
  putBack: (paperId: number, latest: number) => void
}

const copy = v.object({ name: v.string(), at: v.string(), why: v.picklist(copyReasons), bytes: v.number() })
const stored = v.object({
  since: v.string(),
  away: v.nullable(v.object({ at: v.string(), drive: v.string(), folder: v.string() })),
  putOffUntil: v.nullable(v.string()),
  papers: v.nullable(
    v.object({
      at: v.string(),
      papers: v.number(),
      damaged: v.array(
        v.object({ paperId: v.number(), name: v.string(), job: v.string(), goodIn: v.nullable(copy) }),
      ),
    }),
  ),
  outcome: v.nullable(
    v.object({ what: v.picklist(['restored', 'salvaged', 'fresh']), sentence: v.string() }),
  ),
})

const begun = (since: string): KeepingRecord => ({
  since,
  away: null,
  putOffUntil: null,
  papers: null,
  outcome: null,
})

/** A record that can't be read is no reason not to open the book: it is begun again. */
function recordFrom(text: string | undefined): KeepingRecord | undefined {
  if (text === undefined) return undefined
  try {
    const read = v.safeParse(stored, JSON.parse(text))
    return read.success ? read.output : undefined
  } catch (error) {
    if (error instanceof SyntaxError) return undefined
    throw error
  }
}

/** The room for what the book remembers of its own keeping; it lies among the settings under a name of its own. */
export function keepingRoom(connection: Connection, path: string): KeepingRoom {
  const { db, now, read, write } = connection
  const get = db.prepare<[], string>("SELECT value FROM settings WHERE key = 'keeping'").pluck()
  const put = db.prepare(
    "INSERT INTO settings (key, value) VALUES ('keeping', ?) ON CONFLICT (key) DO UPDATE SET value = excluded.value",
  )
  const total = db.prepare<[], number>('SELECT total_changes()').pluck()
  const own = db
    .prepare<[], number>('SELECT (SELECT count(*) FROM jobs) - (SELECT count(*) FROM jobs WHERE sample = 1)')
    .pluck()
  const standing = (): KeepingRecord => {
    const found = recordFrom(get.get())
    if (found) return found
    const fresh = begun(now())
    put.run(JSON.stringify(fresh))
    return fresh
  }
  return {
    read: () => recordFrom(read(() => get.get())) ?? write(standing),
    change: (some) => write(() => void put.run(JSON.stringify({ ...standing(), ...some }))),
    writings: () => read(() => total.get() ?? 0),
    ownJobs: () => read(() => own.get() ?? 0),
    putBack: (paperId, latest) => write(() => putPaperBack(db, { bookPath: path, latest }, paperId)),
  }
}
