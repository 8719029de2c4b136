import type { Deed } from '../../shared/undo/deed.ts'
import type { Step } from '../../shared/undo/step.ts'
import type { Connection } from '../connection.ts'

/** A deed as it lies in the book. The lists leave its steps out. */
export type StoredDeed = Omit<Deed, 'place'> & { address: string; field: string; hand: string; steps: string }

const columns = 'id, at, name, job_id AS jobId, hand, address, field, fixed'

/** At least so many deeds that can be taken back are kept, those taken back just now with them. */
const mostKept = 300

/** Every question about deeds, made ready once. */
export const deedStatements = ({ db }: Connection) => ({
  standing: db.prepare<[number | null, number | null, number], StoredDeed>(
    `SELECT ${columns}, '[]' AS steps FROM deeds WHERE taken_back IS NULL AND (? IS NULL OR job_id = ?) ORDER BY id DESC LIMIT ?`,
  ),
  takenBack: db.prepare<[number | null, number | null, number], StoredDeed>(
    `SELECT ${columns}, '[]' AS steps FROM deeds WHERE taken_back IS NOT NULL AND (? IS NULL OR job_id = ?) ORDER BY taken_back DESC LIMIT ?`,
  ),
  one: db.prepare<[number], StoredDeed>(`SELECT ${columns}, steps FROM deeds WHERE id = ?`),
  /** The last deed of a window that stands, and those done since by others. */
  lastOf: db.prepare<[string], StoredDeed>(
    `SELECT ${columns}, steps FROM deeds WHERE hand = ? ORDER BY id DESC LIMIT 1`,
  ),
  since: db.prepare<[number], StoredDeed>(`SELECT ${columns}, steps FROM deeds WHERE id > ?`),
  isBack: db.prepare<[number], number>('SELECT taken_back IS NOT NULL FROM deeds WHERE id = ?').pluck(),
  ofRises: db.prepare<[], StoredDeed>(`SELECT ${columns}, steps FROM deeds WHERE steps LIKE '%"rises"%'`),
  add: db.prepare(
    'INSERT INTO deeds (at, name, job_id, hand, address, field, steps, fixed) VALUES (?, ?, ?, ?, ?, ?, ?, ?)',
  ),
  retype: db.prepare('UPDATE deeds SET at = ?, name = ?, steps = ? WHERE id = ?'),
  rewrite: db.prepare('UPDATE deeds SET steps = ? WHERE id = ?'),
  drop: db.prepare('DELETE FROM deeds WHERE id = ?'),
  clear: db.prepare('DELETE FROM deeds'),
  /** Once something new is done, what the same hand or on the same job was taken back isn't done again. */
  sweep: db.prepare('DELETE FROM deeds WHERE taken_back IS NOT NULL AND (job_id IS ? OR hand = ?)'),
  prune: db.prepare(
    `DELETE FROM deeds WHERE id <= (SELECT id FROM deeds WHERE fixed IS NULL ORDER BY id DESC LIMIT 1 OFFSET ${mostKept})`,
  ),
  markBack: db.prepare(
    'UPDATE deeds SET taken_back = (SELECT ifnull(max(taken_back), 0) + 1 FROM deeds) WHERE id = ?',
  ),
  markDone: db.prepare('UPDATE deeds SET taken_back = NULL WHERE id = ?'),
})

export type DeedStatements = ReturnType<typeof deedStatements>

/** A deed as it is listed. */
export const deedFrom = ({ id, at, name, jobId, fixed, address, field }: StoredDeed): Deed => ({
  ...{ id, at, name, jobId, fixed },
  place: { address, field },
})

/** What a deed did: the program's own writing, only ever read back. */
export const stepsFrom = ({ steps }: StoredDeed): Step[] => JSON.parse(steps) as Step[]
