import type { Cells } from '../../shared/undo/step.ts'
import type { Connection } from '../connection.ts'
import { Refused } from './refused.ts'

const putBackWords = ' (put back)'

/**
 * How prices are taken back and brought in again. A price is never altered: a rise is marked as undone and stands in the book with that, and brought in
 * again it is a rise of its own, with the same prices. Gives the key of that one.
 */
export function riseSteps({ db, now }: Connection) {
  const undone = db.prepare<[unknown], { undoneAt: string | null }>(
    'SELECT undone_at AS undoneAt FROM rises WHERE id = ?',
  )
  const latest = db.prepare<[], { id: number; origin: string }>(
    'SELECT id, origin FROM rises WHERE finished_at IS NOT NULL AND undone_at IS NULL ORDER BY id DESC LIMIT 1',
  )
  const undo = db.prepare('UPDATE rises SET undone_at = ? WHERE id = ?')
  const begin = db.prepare(
    `INSERT INTO rises (origin, added_at, lines, sample)
     SELECT CASE WHEN origin LIKE '%${putBackWords}' THEN origin ELSE origin || '${putBackWords}' END, ?, lines, sample FROM rises WHERE id = ?`,
  )
  const copy = db.prepare(
    `INSERT INTO prices (item_id, supplier_id, unit, size, price_pence, starts_on, rise_id)
     SELECT item_id, supplier_id, unit, size, price_pence, starts_on, ? FROM prices WHERE rise_id = ? ORDER BY id`,
  )
  const finish = db.prepare('UPDATE rises SET finished_at = ? WHERE id = ?')

  const takeBack = (key: Cells): void => {
    const found = undone.get(key['id'])
    if (!found) throw new Refused('These prices aren’t in the book any more.')
    if (found.undoneAt !== null) return
    const last = latest.get()
    if (last && last.id !== key['id'])
      throw new Refused(`Later prices were made on top of these; take ‘${last.origin}’ back first.`)
    undo.run(now(), key['id'])
  }

  const putBack = (key: Cells): Cells => {
    const found = undone.get(key['id'])
    if (!found) throw new Refused('These prices aren’t in the book any more.')
    if (found.undoneAt === null) return key
    const id = Number(begin.run(now(), key['id']).lastInsertRowid)
    copy.run(id, key['id'])
    finish.run(now(), id)
    return { id }
  }

  return { takeBack, putBack }
}
