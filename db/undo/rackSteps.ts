import type { Cells } from '../../shared/undo/step.ts'
import type { Connection } from '../connection.ts'

/** Puts down in the rack's own log what became of a piece by taking back or doing again: the log is only ever added to. */
export function rackLog({ db, now }: Connection): (id: unknown, before: Cells, after: Cells) => void {
  const log = db.prepare(
    `INSERT INTO rack_moves (piece_id, what, length_mm, place, why, moved_on, added_at) VALUES (?, ?, ?, ?, ?, ?, ?)`,
  )
  return (id, before, after) => {
    const at = now()
    const put = (what: string, why: string) =>
      log.run(id, what, after['length_mm'], after['place'], why, at.slice(0, 10), at)
    const there = (row: Cells) => row['left_on'] === null && row['put_away'] !== 1
    if (there(before) !== there(after)) put(there(after) ? 'in' : 'out', 'taken back')
    if (before['length_mm'] !== after['length_mm'])
      put('measured', `taken back, ${String(before['length_mm'])} before`)
    if (before['place'] !== after['place']) put('moved', 'taken back')
  }
}
