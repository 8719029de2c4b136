import type { Database } from 'better-sqlite3'

/**
 * How rows of a table that a deed wrote are taken back. row: taken out and put in again; away: put away, since nothing of it leaves the book;
 * marked: marked as taken back; rise: prices, by their rise; record: not at all.
 */
export type Way = 'row' | 'away' | 'marked' | 'rise' | 'record'

type Watch = {
  way: Way
  key: readonly string[]
  trees?: readonly string[]
  skip?: readonly string[]
  only?: readonly string[]
}

/** Every table that deeds are read from. What follows from these alone (the log of changes, words to find by, rows of an order) isn't watched. */
const watches: Readonly<Record<string, Watch>> = {
  jobs: { way: 'away', key: ['id'], trees: ['entry'], skip: ['version', 'updated_at', 'put_away'] },
  customers: { way: 'record', key: ['id'] },
  options: { way: 'row', key: ['id'], trees: ['spec', 'entry'], skip: ['version'] },
  work_done: { way: 'row', key: ['id'] },
  settings: { way: 'row', key: ['key'], trees: ['value'] },
  sections: { way: 'row', key: ['id'] },
  usual_gates: { way: 'row', key: ['id'], trees: ['spec'] },
  items: { way: 'away', key: ['id'], trees: ['facts'], skip: ['put_away'] },
  suppliers: { way: 'away', key: ['id'], skip: ['put_away'] },
  supplies: { way: 'row', key: ['item_id', 'supplier_id'], trees: ['lengths_mm'] },
  rises: { way: 'rise', key: ['id'] },
  rack_pieces: { way: 'away', key: ['id'], skip: ['put_away'] },
  order_cuts: { way: 'marked', key: ['id'], skip: ['taken_back_at'] },
  order_receipts: { way: 'marked', key: ['id'], skip: ['taken_back_at'] },
  orders: { way: 'record', key: ['id'], only: ['id', 'number', 'cancelled_at'] },
  papers: { way: 'record', key: ['id'], only: ['id', 'job_id', 'kind', 'revision'] },
  acceptances: { way: 'record', key: ['paper_id'], only: ['paper_id', 'option_place'] },
  job_notes: { way: 'away', key: ['id'] },
  photographs: { way: 'away', key: ['id'] },
}

/** A watched table as it lies in the open book. columns: those whose cells deeds keep, each with whether it holds a fraction or a tree. */
export type Watched = {
  table: string
  way: Way
  key: readonly string[]
  columns: readonly { name: string; fraction: boolean; tree: boolean }[]
}

type Column = { name: string; type: string; hidden: number }

/** The tables of this book that are watched. */
export function watchedTables(db: Database): Watched[] {
  const columnsOf = db.prepare<[string], Column>(
    "SELECT name, type, hidden FROM pragma_table_xinfo(?, 'main')",
  )
  return Object.entries(watches).flatMap(([table, { way, key, trees = [], skip = [], only }]) => {
    const columns = columnsOf
      .all(table)
      .filter(({ name, type, hidden }) => hidden === 0 && type !== 'BLOB' && !skip.includes(name))
      .filter(({ name }) => only?.includes(name) ?? true)
      .map(({ name, type }) => ({ name, fraction: type === 'REAL', tree: trees.includes(name) }))
    return columns.length > 0 ? [{ table, way, key, columns }] : []
  })
}
