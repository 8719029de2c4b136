import type { Database } from 'better-sqlite3'
import type { Cells, Seen } from '../../shared/undo/step.ts'
import type { Watched } from './watched.ts'

/** What sees every row that is written while it is switched on. */
export type Capture = {
  /** Rows written since the last asking, in order. They are let go of by it. */
  taken: () => Seen[]
  /** Does something that is no deed of its own. */
  without: <T>(work: () => T) => T
}

type SeenRow = { tbl: string; was: string | null; now: string | null }

/** A row as a text: fractions with all of their figures, since the store's own way of writing them rounds. */
const rowText = (which: 'OLD' | 'NEW', { columns }: Watched): string => {
  const cells = columns.map(({ name, fraction }) => {
    const cell = `${which}."${name}"`
    return `'${name}', ${fraction ? `CASE WHEN ${cell} IS NULL THEN NULL ELSE printf('%!.17g', ${cell}) END` : cell}`
  })
  return `json_object(${cells.join(', ')})`
}

const trigger = (watched: Watched, on: 'INSERT' | 'UPDATE' | 'DELETE'): string => {
  const was = on === 'INSERT' ? 'NULL' : rowText('OLD', watched)
  const now = on === 'DELETE' ? 'NULL' : rowText('NEW', watched)
  return `CREATE TEMP TRIGGER "deed_${watched.table}_${on}" AFTER ${on} ON main."${watched.table}"
    WHEN (SELECT watching FROM deed_watch)
    BEGIN INSERT INTO deed_rows (tbl, was, now) VALUES ('${watched.table}', ${was}, ${now}); END`
}

/** A row's cells from its text, trees opened. */
function cellsFrom(text: string, { columns }: Watched): Cells {
  const read = JSON.parse(text) as Cells
  return Object.fromEntries(
    columns.map(({ name, fraction, tree }) => {
      const cell = read[name]
      if (fraction && typeof cell === 'string') return [name, Number(cell)]
      return [name, tree && typeof cell === 'string' ? (JSON.parse(cell) as unknown) : cell]
    }),
  )
}

/**
 * Sees the rows that this way to the book writes: what a deed did is read off what it wrote, so that none can be forgotten. What is seen lies beside
 * the book in memory and goes with the writing if that is broken off.
 */
export function capture(db: Database, tables: readonly Watched[]): Capture {
  db.pragma('temp_store = MEMORY')
  db.exec(`CREATE TEMP TABLE deed_watch (watching INTEGER NOT NULL);
    CREATE TEMP TABLE deed_rows (place INTEGER PRIMARY KEY, tbl TEXT NOT NULL, was TEXT, now TEXT);
    INSERT INTO deed_watch VALUES (1)`)
  for (const watched of tables)
    for (const on of ['INSERT', 'UPDATE', 'DELETE'] as const) db.exec(trigger(watched, on))
  const byName = new Map(tables.map((watched) => [watched.table, watched]))
  const rows = db.prepare<[], SeenRow>('SELECT tbl, was, now FROM temp.deed_rows ORDER BY place')
  const letGo = db.prepare('DELETE FROM temp.deed_rows')
  const watch = db.prepare('UPDATE temp.deed_watch SET watching = ?')

  const seenFrom = ({ tbl, was, now }: SeenRow): Seen[] => {
    const watched = byName.get(tbl)
    if (!watched) return []
    const [before, after] = [was, now].map((text) => (text === null ? null : cellsFrom(text, watched)))
    const named = after ?? before ?? {}
    const key = Object.fromEntries(watched.key.map((name) => [name, named[name]]))
    return [{ table: tbl, key, was: before ?? null, is: after ?? null }]
  }

  return {
    taken: () => {
      const seen = rows.all()
      if (seen.length > 0) letGo.run()
      return seen.flatMap(seenFrom)
    },
    without: (work) => {
      watch.run(0)
      try {
        return work()
      } finally {
        watch.run(1)
      }
    },
  }
}
