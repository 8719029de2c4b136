import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import Sqlite from 'better-sqlite3'
import { describe, expect, it, vi } from 'vitest'
import { addSample } from '../../electron/handlers/sampleCards.ts'
import { inBook } from '../../db/openBook/columns.ts'
import { filesOf, staysHome, tableNames, tableOf } from '../../shared/openBook/tables.ts'
import { openedBook, temporaryFolder } from '../db/temporaryBook.ts'
import { sampleSize, seed } from '../fixtures/sample.ts'
import { makeableJob, opened, type Opened } from '../handlers/opened.ts'
import { metrePrice } from '../fixtures/prices.ts'
import { scriptWords } from './hostileWords.ts'
import { readMigrations } from '../../db/migrate.ts'
import { broughtIn, filesIn, freshBook, takenOut } from './carried.ts'
import { everyRow, rulesOf } from './everyRow.ts'
import { seededBook } from './seededBook.ts'

async function expectSame(from: Opened): Promise<void> {
  const folder = await takenOut(from)
  const to = freshBook()
  const rules = rulesOf(to.book.path)
  await broughtIn(to, folder)
  const [before, after] = [everyRow(from.book.path), everyRow(to.book.path)]
  expect(Object.keys(after)).toEqual(Object.keys(before))
  for (const [table, rows] of Object.entries(before)) expect(after[table], table).toEqual(rows)
  expect(rulesOf(to.book.path)).toEqual(rules)
  const again = filesIn(await takenOut(to))
  const first = filesIn(folder)
  expect([...again.keys()]).toEqual([...first.keys()])
  for (const [place, bytes] of first) expect(again.get(place)?.equals(bytes), place).toBe(true)
}

describe('the open files', () => {
  it('write every table and column that the book keeps of its own', () => {
    const db = new Sqlite(openedBook().path, { readonly: true })
    const tables = db
      .prepare<[], { name: string }>(
        "SELECT name FROM pragma_table_list WHERE schema = 'main' AND type = 'table' AND name NOT LIKE 'sqlite_%'",
      )
      .all()
    const carried = tables.map(({ name }) => name).filter((name) => !staysHome.includes(name))
    expect(carried.sort()).toEqual(tableNames.map(inBook).sort())
    for (const table of tableNames) {
      const columns = db
        .prepare<[string], { name: string }>('SELECT name FROM pragma_table_xinfo(?) WHERE hidden = 0')
        .all(inBook(table))
        .map(({ name }) => name)
        .filter((name) => !filesOf(table).some(({ column }) => inBook(column) === name))
      expect(columns.sort(), table).toEqual(Object.keys(tableOf(table).columns).map(inBook).sort())
    }
    db.close()
  })
})

describe('a book taken out and brought into a fresh one', () => {
  it('is the same in every row of every table, and goes out again byte for byte: the sample book', async () => {
    const from = opened()
    await addSample(from)
    await expectSame(from)
  })

  const books = sampleSize('open book, round trips', { usual: 8, long: 200, of: 'random books' })
  it(
    `is the same in every row of every table, and goes out again byte for byte: ${books} random books`,
    async () => {
      for (let place = 0; place < books; place += 1) await expectSame(await seededBook(seed + place))
    },
    20_000 * books,
  )

  it('is the same with words that might run in every field that takes words', async () => {
    const from = await seededBook(seed + 30)
    const { ask } = from
    const jobId = from.jobs[1]?.id ?? 0
    await ask('settings.change', { name: scriptWords.join(' ').slice(0, 300) })
    for (const words of scriptWords) {
      const line = words.slice(0, 60)
      const { id } = await ask('jobs.create', {
        ...{ customerName: words, town: words, phone: words, title: words, due: null },
      })
      const paths = ['notes', 'customer.address', 'customer.email']
      await ask('jobs.change', { id, changes: paths.map((path) => ({ path, value: words })) })
      const supplier = await ask('prices.addSupplier', { name: words, phone: line, notes: words })
      const item = await ask('prices.addItem', { kind: 'ironmongery', name: words, facts: { piece: line } })
      const supply = { itemId: item.id, supplierId: supplier.id, code: line, lengths: [], usual: true }
      await ask('prices.supply', supply)
      from.book.rises.add({
        prices: [{ ...metrePrice(item.id, supplier.id), unit: 'each' }],
        ...{ origin: words, stamp: null },
      })
      await ask('workDone.add', {
        ...{
          jobId,
          what: 'cost',
          group: 'extras',
          operation: line,
          quantity: 1,
          note: words,
          on: '2026-03-04',
        },
      })
      await ask('rack.add', {
        ...{
          itemId: from.items['boards'] ?? 0,
          length: 900,
          count: 1,
          place: line,
          jobId: null,
          note: words,
        },
      })
    }
    const { business } = (await ask('book.summary', {})).settings
    await ask('settings.change', { business: { ...business, terms: scriptWords.join('\n') } })
    await expectSame(from)
  })

  it('comes into a newer layout by the newer one’s own steps', async () => {
    const from = await seededBook(seed + 31)
    const folder = await takenOut(from)
    const steps = readMigrations()
    const sql = "ALTER TABLE jobs ADD COLUMN shade TEXT NOT NULL DEFAULT 'plain'"
    const newer = [...steps, { number: steps.length + 1, name: 'shade', sql }]
    const to = opened({ book: openedBook(undefined, { migrations: newer }) })
    await broughtIn(to, folder)
    const rows = everyRow(to.book.path)['jobs'] ?? []
    expect(rows).toHaveLength(from.book.jobs.count().jobs)
    for (const row of rows) expect(JSON.parse(String(row))).toMatchObject({ shade: 'plain' })
  })

  it('can be used as the first could: jobs found, prices read, papers opened, numbers going on', async () => {
    const from = await seededBook(seed + 7)
    const to = freshBook()
    await broughtIn(to, await takenOut(from))
    expect((await to.ask('jobs.list', { search: 'nether test', stage: null })).rows).toEqual(
      (await from.ask('jobs.list', { search: 'nether test', stage: null })).rows,
    )
    expect(await to.ask('prices.book', {})).toEqual(await from.ask('prices.book', {}))
    const papers = (await from.ask('jobs.list', { search: '', stage: null })).rows.filter(
      (row) => row.papers > 0,
    )
    expect(papers.length).toBeGreaterThan(0)
    for (const { id } of papers)
      for (const paper of await from.ask('papers.list', { jobId: id }))
        expect(await to.ask('papers.bytes', { id: paper.id })).toEqual(
          await from.ask('papers.bytes', { id: paper.id }),
        )
    expect((await makeableJob(to)).number).toBe((await makeableJob(from)).number)
  })
})

describe('bringing a book in', () => {
  it('leaves the guards standing: a job and a paper still never leave the book', async () => {
    const to = freshBook()
    await broughtIn(to, await takenOut(await seededBook(seed + 3)))
    const db = new Sqlite(to.book.path)
    expect(() => db.exec('DELETE FROM jobs')).toThrow(/never leaves/)
    expect(() => db.exec('UPDATE papers SET pages = 7')).toThrow(/never altered/)
    db.close()
  })

  it('makes a copy of the book first, which holds what stood there', async () => {
    const to = await seededBook(seed + 4)
    const before = everyRow(to.book.path)
    await to.ask('book.lookInto', { folder: await takenOut(await seededBook(seed + 5)) })
    const folder = await takenOut(await seededBook(seed + 6))
    const look = await to.ask('book.lookInto', { folder })
    expect(look).toMatchObject({ folder, problems: [] })
    expect(look?.own).toBeGreaterThan(0)
    expect(await to.refused('book.bringIn', { folder, replace: false })).toEqual(['own-jobs replace'])
    expect(everyRow(to.book.path)).toEqual(before)
    const { copy, counts } = await to.ask('book.bringIn', { folder, replace: true })
    expect(dirname(copy)).toBe(dirname(to.book.path))
    expect(everyRow(copy)).toEqual(before)
    expect(counts).toEqual(look?.counts)
    expect(existsSync(`${to.book.path}.coming-in`)).toBe(false)
  })

  it('asks the keeper of copies where there is one, and again when the book was changed meanwhile', async () => {
    const kept: string[] = []
    const book = openedBook()
    const to = opened({
      book,
      copyBefore: async (what) => {
        kept.push(what)
        if (kept.length === 1) await to.ask('settings.change', { name: 'changed meanwhile' })
        return '/somewhere/a copy'
      },
    })
    const folder = await takenOut(await seededBook(seed + 8))
    await to.ask('book.lookInto', { folder })
    expect((await to.ask('book.bringIn', { folder, replace: false })).copy).toBe('/somewhere/a copy')
    expect(kept).toEqual(['import', 'import'])
  })

  it('takes only the folder that was looked into', async () => {
    const to = freshBook()
    const folder = await takenOut(await seededBook(seed + 9))
    expect(await to.refused('book.bringIn', { folder, replace: true })).toEqual(['refused folder'])
  })
})

describe('taking a book out', () => {
  it('never writes over what is there: the next free name is taken', async () => {
    const from = freshBook()
    const parent = temporaryFolder()
    const [first, second] = [
      await from.ask('book.takeOut', { folder: parent }),
      await from.ask('book.takeOut', { folder: parent }),
    ]
    expect([first?.folder, second?.folder]).toEqual(
      ['Bracework book 2026-03-02', 'Bracework book 2026-03-02 (2)'].map((name) => join(parent, name)),
    )
    expect(readdirSync(parent)).toHaveLength(2)
  })

  it('gives readable files: a job in mm under its number, prices in a list with names', async () => {
    const from = opened()
    await addSample(from)
    const folder = await takenOut(from)
    const places = [...filesIn(folder).keys()]
    expect(places).toEqual(
      expect.arrayContaining(['settings.json', 'customers.json', 'rack.json', 'prices/prices.csv']),
    )
    const [list] = (await from.ask('jobs.list', { search: '', stage: null })).rows
    const file = places.find((place) => place.startsWith(`jobs/S/${list?.number}`))
    const job = JSON.parse(readFileSync(join(folder, file ?? ''), 'utf8')) as {
      jobs: { entry: { spec: unknown } }[]
    }
    expect(job.jobs[0]?.entry.spec).toMatchObject({ version: 1 })
    expect(readFileSync(join(folder, 'prices/prices.csv'), 'utf8').split('\r\n')[0]).toContain(
      'pricePence,startsOn,riseId,itemName',
    )
    expect(places.filter((place) => place.endsWith('.pdf')).length).toBeGreaterThan(2)
  })

  it('refuses a folder that isn’t there, and one not written whole', async () => {
    const { refused } = freshBook()
    expect(await refused('book.takeOut', { folder: join(temporaryFolder(), 'none') })).toEqual([
      'refused folder',
    ])
    expect(await refused('book.takeOut', { folder: 'here' })).toEqual(['refused folder'])
  })

  it('asks for the folder where there is a window for that, and takes none that was typed', async () => {
    const chosen = temporaryFolder()
    const { ask, refused } = opened({ chooseFolder: async () => chosen })
    expect(await refused('book.takeOut', { folder: temporaryFolder() })).toEqual(['refused folder'])
    expect((await ask('book.takeOut', { folder: null }))?.folder).toContain(chosen)
    const away = opened({ chooseFolder: async () => null })
    expect(await away.ask('book.takeOut', { folder: null })).toBeNull()
    expect(await opened().refused('book.takeOut', { folder: null })).toEqual(['refused folder'])
  })

  it('is stopped when asked, leaving nothing; how far it is can be seen meanwhile', async () => {
    const from = await seededBook(seed + 11)
    const parent = temporaryFolder()
    expect(await from.ask('book.inHand', {})).toBeNull()
    const going = from.refused('book.takeOut', { folder: parent })
    await vi.waitFor(
      async () => expect(await from.ask('book.inHand', {})).toMatchObject({ what: 'taking out' }),
      {
        interval: 0,
        timeout: 20_000,
      },
    )
    expect(await from.refused('book.takeOut', { folder: parent })).toEqual(['busy'])
    expect(await from.ask('book.stopWork', {})).toEqual({ stopped: true })
    expect(await going).toEqual(['stopped'])
    expect(readdirSync(parent)).toEqual([])
    expect(await from.ask('book.stopWork', {})).toEqual({ stopped: false })
  })

  it('takes a book out with a paper that is no longer what was issued, names it, and brings it in as it was', async () => {
    const from = await seededBook(seed + 12)
    const db = new Sqlite(from.book.path)
    db.exec("DROP TRIGGER papers_stand; UPDATE papers SET bytes = x'25504446' WHERE id = 1")
    db.close()
    const out = await from.ask('book.takeOut', { folder: temporaryFolder() })
    const [name = '', ...others] = out?.damaged ?? []
    expect([name, others]).toEqual([expect.stringMatching(/ (card|quotation) \d+$/), []])
    const files = filesIn(out?.folder ?? '')
    const note = [...files].filter(([place]) => place.endsWith(`/${name} is damaged.txt`))
    expect(note.map(([, words]) => words.toString('utf8'))).toEqual([
      expect.stringMatching(/^This paper is no longer what was issued on \d{4}-\d\d-\d\d/),
    ])
    const to = freshBook()
    await broughtIn(to, out?.folder ?? '')
    expect(everyRow(to.book.path)).toEqual(everyRow(from.book.path))
    const again = await to.ask('book.takeOut', { folder: temporaryFolder() })
    expect(again?.damaged).toEqual([name])
  })

  it('doesn’t take a paper in that is another than was issued where the folder says nothing of it', async () => {
    const from = await seededBook(seed + 13)
    const folder = await takenOut(from)
    const place = [...filesIn(folder).keys()].find((one) => one.endsWith('.pdf')) ?? ''
    writeFileSync(join(folder, place), '%PDF')
    const looked = await freshBook().ask('book.lookInto', { folder })
    expect(looked?.problems.map(({ field }) => field)).toEqual([place])
  })

  it('takes a photograph that is no longer what was put in out as it lies and names it, and takes in no folder with another one’s bytes', async () => {
    const from = await seededBook(seed + 13)
    const folder = await takenOut(from)
    const place = [...filesIn(folder).keys()].find((name) => name.endsWith('photograph 1.jpg')) ?? ''
    writeFileSync(join(folder, place), 'another picture')
    const look = await freshBook().ask('book.lookInto', { folder })
    expect(look?.problems).toMatchObject([{ field: place }])
    expect(look?.problems[0]?.message).toContain('it isn’t the photograph that was put in')
    const db = new Sqlite(from.book.path)
    db.exec("DROP TRIGGER photographs_stand; UPDATE photographs SET thumbnail = x'ffd8' WHERE id = 1")
    db.close()
    const out = await from.ask('book.takeOut', { folder: temporaryFolder() })
    expect(out?.damaged).toHaveLength(1)
    expect(out?.damaged[0]).toMatch(/photograph 1$/)
  })
})
