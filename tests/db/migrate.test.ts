import { mkdirSync, readdirSync, writeFileSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import Sqlite from 'better-sqlite3'
import type { Database } from 'better-sqlite3'
import { describe, expect, it } from 'vitest'
import { createBook } from '../../db/create.ts'
import { migrate, layoutOf, readMigrations, type Migration } from '../../db/migrate.ts'
import { openBook } from '../../db/open.ts'
import { bookPath, openedBook, temporaryFolder, tickingClock } from './temporaryBook.ts'

const steps = readMigrations()
const latest = steps.length

/** Rows for a book at each layout, as that layout's own program would have left them. A new step needs the entry before it. */
const rowsAt: Record<number, (db: Database) => void> = {
  0: () => undefined,
  1: (db) => {
    const entry = JSON.stringify({
      spec: { construction: 'ledged', size: { width: 915, height: null } },
      typed: {},
    })
    db.exec(`
      INSERT INTO customers (id, name, created_at) VALUES (4, 'Peg Sash', '2026-01-05T09:00:00Z');
      INSERT INTO jobs (id, number, customer_id, title, stage, unit, entry, created_at, updated_at)
        VALUES (9, '2026-001', 4, 'Side gate', 'enquiry', 'mm', '${entry}', '2026-01-05T09:00:00Z', '2026-01-05T09:00:00Z');
      INSERT INTO changes (job_id, path, before, after, at) VALUES (9, 'title', '""', '"Side gate"', '2026-01-05T09:00:00Z');
      INSERT INTO papers (job_id, kind, revision, format, issued_at, engine, spec, figures, parts, header, pages, bytes, sha256)
        VALUES (9, 'job-card', 1, 'a4', '2026-01-06T09:00:00Z', '1', '{}', '{}', '{}', '{}', 1, x'25504446', '${'0'.repeat(64)}');
    `)
  },
  2: (db) => {
    rowsAt[1]?.(db)
    db.exec(`
      INSERT INTO suppliers (id, name) VALUES (3, 'Test Timber');
      INSERT INTO items (id, kind, name, facts) VALUES (5, 'work', 'bench hour', '{"rate":"hour"}');
      INSERT INTO supplies (item_id, supplier_id, code) VALUES (5, 3, 'BH1');
      INSERT INTO rises (id, origin, added_at, lines, finished_at) VALUES (2, 'by hand', '2026-01-07T09:00:00Z', 1, '2026-01-07T09:00:01Z');
      INSERT INTO prices (item_id, supplier_id, unit, price_pence, starts_on, rise_id) VALUES (5, 3, 'hour', 3850, '2026-01-08', 2);
      INSERT INTO options (job_id, position, name, entry) VALUES (9, 1, 'Oak', '{}');
      INSERT INTO papers (id, job_id, kind, revision, format, issued_at, engine, spec, figures, parts, header, money, pages, bytes, sha256)
        VALUES (7, 9, 'quotation', 1, 'a4', '2026-01-09T09:00:00Z', '1', '{}', '{}', '{}', '{}', '{"validUntil":"2026-02-08"}', 2, x'255044',
          '${'1'.repeat(64)}');
      INSERT INTO acceptances (paper_id, option_place, accepted_on, added_at) VALUES (7, 0, '2026-01-12', '2026-01-12T09:00:00Z');
      INSERT INTO work_done (job_id, what, work_group, operation, quantity, done_on, added_at)
        VALUES (9, 'hours', 'making', 'rip', 0.75, '2026-01-20', '2026-01-20T17:00:00Z');
    `)
  },
  3: (db) => {
    rowsAt[2]?.(db)
    db.exec(`
      INSERT INTO items (id, kind, name, facts) VALUES (6, 'timber', 'ex 32 × 150', '{"species":"European redwood"}');
      INSERT INTO rises (id, origin, added_at, lines, finished_at) VALUES (3, 'by hand', '2026-01-21T09:00:00Z', 1, '2026-01-21T09:00:01Z');
      INSERT INTO prices (id, item_id, supplier_id, unit, size, price_pence, starts_on, rise_id) VALUES (40, 6, 3, 'length', 4800, 1650, '2026-01-21', 3);
      INSERT INTO rack_pieces (id, item_id, length_mm, place, job_id, added_on) VALUES (2, 6, 1312.5, 'by the door', 9, '2026-01-22');
      INSERT INTO rack_moves (piece_id, what, length_mm, place, moved_on, added_at) VALUES (2, 'in', 1312.5, 'by the door', '2026-01-22', '2026-01-22T09:00:00Z');
      INSERT INTO orders (id, number, placed_on, cost_pence, request, plan, pairs, added_at)
        VALUES (4, '2026-T01', '2026-01-23', 3300, '{}', '{}', '[]', '2026-01-23T09:00:00Z');
      INSERT INTO order_jobs (order_id, job_id, stage_before) VALUES (4, 9, 'quoted');
      INSERT INTO order_lines (id, order_id, item_id, supplier_id, price_id, length_mm, count, price_pence) VALUES (11, 4, 6, 3, 40, 4800, 2, 1650);
      INSERT INTO order_receipts (line_id, count, received_on, added_at) VALUES (11, 1, '2026-01-24', '2026-01-24T09:00:00Z');
      INSERT INTO order_lengths (id, order_id, item_id, source, length_mm, count, cuts, offcut_mm, left_from)
        VALUES (12, 4, 6, 'merchant', 4800, 2, '[]', 310, 9), (13, 4, 6, 'rack', 1312.5, 1, '[]', 12.5, 9);
      INSERT INTO order_rack (length_id, piece_id) VALUES (13, 2);
      INSERT INTO order_cuts (length_id, count, cut_on, added_at) VALUES (12, 1, '2026-01-25', '2026-01-25T09:00:00Z');
    `)
  },
  4: (db) => {
    rowsAt[3]?.(db)
    db.exec(`
      INSERT INTO job_notes (job_id, place, words, noted_on, noted_at, added_at)
        VALUES (9, 1, 'Ring before coming.', '2026-01-26', '14:05', '2026-01-26T14:06:00Z');
      INSERT INTO photographs (job_id, place, words, width, height, added_at, sha256, thumbnail_sha256, thumbnail, bytes)
        VALUES (9, 1, 'the post', 8, 6, '2026-01-26T15:00:00Z', '${'2'.repeat(64)}', '${'3'.repeat(64)}', x'ffd8', x'ffd8ff');
    `)
  },
  5: (db) => {
    rowsAt[4]?.(db)
    db.exec(
      "INSERT INTO usual_gates (name, unit, spec, kept_at) VALUES ('Paddock gate', 'in', '{}', '2026-01-26T09:00:00Z')",
    )
  },
  6: (db) => {
    rowsAt[5]?.(db)
    db.exec(`INSERT INTO deeds (at, name, job_id, address, field, steps)
      VALUES ('2026-01-26T09:00:00Z', 'Width 900 → 915 on job 2026-001', 9, '#/job/9/gate', 'size.width', '[]')`)
  },
  7: (db) => rowsAt[6]?.(db),
}

const kept = [
  ...['customers', 'jobs', 'changes', 'papers', 'settings', 'sections'],
  ...['suppliers', 'items', 'supplies', 'rises', 'prices', 'options', 'acceptances', 'work_done'],
  ...['orders', 'order_jobs', 'order_lines', 'order_receipts', 'order_lengths', 'order_cuts'],
  ...['order_rack', 'rack_pieces', 'rack_moves', 'deeds', 'job_notes', 'photographs'],
]

const counts = (db: Database): Record<string, number> =>
  Object.fromEntries(
    kept
      .filter((table) => db.prepare('SELECT 1 FROM sqlite_schema WHERE name = ?').get(table) !== undefined)
      .map((table) => [table, Number(db.prepare(`SELECT count(*) FROM ${table}`).pluck().get())]),
  )

/** The layout after the last, as a test would have it: one more column. */
const invented: Migration = {
  number: latest + 1,
  name: 'invented',
  sql: "ALTER TABLE customers ADD COLUMN nickname TEXT NOT NULL DEFAULT 'none yet';",
}

/** A closed book with the rows of a layout in it. */
function bookAt(layout: number): string {
  const path = bookPath()
  createBook(path, steps.slice(0, layout))
  const db = new Sqlite(path)
  rowsAt[layout]?.(db)
  db.close()
  return path
}

describe('the steps of the layout', () => {
  it('come out as the layout on record', async () => {
    const db = new Sqlite(':memory:')
    migrate(db, steps)
    const objects = db
      .prepare<[], { sql: string }>(
        "SELECT sql FROM sqlite_schema WHERE sql IS NOT NULL AND name NOT GLOB '*_words_*' ORDER BY type, name",
      )
      .all()
    db.close()
    await expect(`${objects.map(({ sql }) => sql).join(';\n\n')};\n`).toMatchFileSnapshot(
      'schema.snapshot.sql',
    )
  })

  it('leave every ordinary table strict', () => {
    const db = new Sqlite(':memory:')
    migrate(db, steps)
    const loose = db
      .prepare(
        "SELECT name FROM pragma_table_list WHERE schema = 'main' AND type = 'table' AND strict = 0 AND name NOT LIKE 'sqlite_%'",
      )
      .pluck()
      .all()
    db.close()
    expect(loose).toEqual([])
  })

  it.each(steps.map((step) => [step.number, step.name] as const))(
    'step %i (%s) keeps every row of the layout before',
    (number) => {
      expect(rowsAt).toHaveProperty(String(number - 1))
      const db = new Sqlite(':memory:')
      migrate(db, steps.slice(0, number - 1))
      rowsAt[number - 1]?.(db)
      const before = counts(db)
      migrate(db, steps.slice(0, number))
      expect(counts(db)).toMatchObject(before)
      expect(layoutOf(db)).toBe(number)
      expect(db.pragma('foreign_key_check')).toEqual([])
      expect(db.pragma('integrity_check', { simple: true })).toBe('ok')
      db.close()
    },
  )

  it('let a quotation be a paper, each card as it was: its row, its bytes, its guards', () => {
    const db = new Sqlite(':memory:')
    migrate(db, steps.slice(0, 1))
    rowsAt[1]?.(db)
    const cells =
      'id, job_id, kind, revision, format, issued_at, engine, spec, figures, parts, header, pages, hex(bytes), sha256'
    const rows = (): unknown => db.prepare(`SELECT ${cells} FROM papers`).all()
    const before = rows()
    migrate(db, steps.slice(0, 2))
    expect(rows()).toEqual(before)
    expect(db.prepare('SELECT money, valid_until FROM papers').all()).toEqual([
      { money: null, valid_until: null },
    ])
    expect(() => db.exec('UPDATE papers SET pages = 9')).toThrow('never altered')
    expect(() => db.exec('DELETE FROM papers')).toThrow('never leaves the book')
    const again = (kind: string, money: string) => () =>
      db.exec(`INSERT INTO papers (job_id, kind, revision, format, issued_at, engine, spec, figures, parts, header, money, pages, bytes, sha256)
        SELECT job_id, '${kind}', 2, format, issued_at, engine, spec, figures, parts, header, ${money}, pages, bytes, sha256 FROM papers LIMIT 1`)
    expect(again('quotation', 'NULL')).toThrow('CHECK')
    expect(again('job-card', "'{}'")).toThrow('CHECK')
    again('quotation', `'{"validUntil":"2026-02-08"}'`)()
    expect(db.prepare("SELECT valid_until FROM papers WHERE kind = 'quotation'").pluck().get()).toBe(
      '2026-02-08',
    )
    db.close()
  })

  it('refuse a folder with a number missing', () => {
    const folder = temporaryFolder()
    mkdirSync(join(folder, 'steps'))
    writeFileSync(join(folder, 'steps', '0001-first.sql'), '')
    writeFileSync(join(folder, 'steps', '0003-third.sql'), '')
    expect(() => readMigrations(join(folder, 'steps'))).toThrow('migration 2 is missing')
  })
})

describe('bringing an older book up to date', () => {
  it('puts a checked copy beside it first, which opens as the book was', () => {
    const path = bookAt(latest)
    const book = openedBook(path, { migrations: [...steps, invented] })
    expect(book.copy).toBe(join(dirname(path), `jobs-before-000${latest + 1}.book`))
    const copy = new Sqlite(book.copy ?? '', { readonly: true })
    expect({ layout: layoutOf(copy), rows: counts(copy) }).toEqual({
      layout: latest,
      rows: { ...counts(copy), jobs: 1, papers: 2, prices: 2, acceptances: 1, order_cuts: 1 },
    })
    copy.close()
    const now = new Sqlite(path, { readonly: true })
    expect(layoutOf(now)).toBe(latest + 1)
    expect(now.prepare('SELECT nickname FROM customers').pluck().all()).toEqual(['none yet'])
    now.close()
  })

  it('makes no second copy when the book is up to date, and writes over no earlier copy', () => {
    const path = bookAt(latest)
    writeFileSync(path.replace('.book', `-before-000${latest + 1}.book`), 'an earlier copy')
    const first = openBook(path, { now: tickingClock(), migrations: [...steps, invented] })
    first.close()
    const second = openBook(path, { now: tickingClock(), migrations: [...steps, invented] })
    second.close()
    expect(basename(first.copy ?? '')).toBe(`jobs-before-000${latest + 1}-2.book`)
    expect(second.copy).toBeNull()
    expect(readdirSync(dirname(path)).filter((name) => name.endsWith('.unfinished'))).toEqual([])
  })

  it('leaves the book at its old layout, whole, when a step fails halfway', () => {
    const path = bookAt(latest)
    const failing = { ...invented, sql: `${invented.sql} INSERT INTO nowhere VALUES (1);` }
    expect(() => openBook(path, { now: tickingClock(), migrations: [...steps, failing] })).toThrow('nowhere')
    const db = new Sqlite(path, { readonly: true })
    expect(layoutOf(db)).toBe(latest)
    expect(
      db.prepare("SELECT count(*) FROM pragma_table_info('customers') WHERE name = 'nickname'").pluck().get(),
    ).toBe(0)
    db.close()
  })

  it('refuses a step that leaves rows belonging to nothing', () => {
    const path = bookAt(latest)
    const orphaning = { ...invented, sql: 'DELETE FROM customers;' }
    expect(() => openBook(path, { now: tickingClock(), migrations: [...steps, orphaning] })).toThrow(
      'belong to nothing',
    )
  })

  it('holds rows to what they belong to again afterwards, also after a step that failed', () => {
    const db = new Sqlite(':memory:')
    const failing = { number: 1, name: 'failing', sql: 'INSERT INTO nowhere VALUES (1);' }
    expect(() => migrate(db, [failing])).toThrow('nowhere')
    expect(db.pragma('foreign_keys', { simple: true })).toBe(1)
    migrate(db, steps)
    expect(() =>
      db.exec("INSERT INTO changes (job_id, path, before, after, at) VALUES (7, '', '0', '0', '')"),
    ).toThrow('FOREIGN KEY')
    db.close()
  })
})
