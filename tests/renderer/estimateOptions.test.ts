import { describe, expect, it } from 'vitest'
import { pence } from '../../shared/pricing/pence.ts'
import { useOptionsStore } from '../../renderer/stores/options.ts'
import { hourRates, optionBook } from './estimateStandIn.ts'
import { pause } from './standIn.ts'

const rest = 450

describe('versions of a gate as they are written', () => {
  it('start as the gate as drawn, which the book has no row for until something is said of it', async () => {
    const book = optionBook(hourRates())
    const store = useOptionsStore()
    await store.read(7)
    expect(store.options).toMatchObject([{ id: 0, name: 'As drawn', spec: null }])
    store.editEntry(0, { kilometres: 23 })
    expect(store.chosen?.entry.kilometres).toBe(23)
    expect(book.rows).toEqual([])
    await pause(rest)
    expect(book.rows).toMatchObject([{ id: 40, name: 'As drawn', entry: { kilometres: 23, siteVisits: 1 } }])
    expect(store.chosen?.id).toBe(40)
  })

  it('go to the book once a rest of the hand, with the last of several keys', async () => {
    const book = optionBook(hourRates())
    const store = useOptionsStore()
    await store.read(7)
    for (const kilometres of [1, 14, 140]) store.editEntry(0, { kilometres })
    await pause(rest)
    expect(book.asked).toEqual(['add As drawn'])
    store.edit(40, { name: 'Redwood' })
    await store.send()
    expect(book.asked).toEqual(['add As drawn', 'change Redwood'])
    expect(book.rows[0]?.entry.kilometres).toBe(140)
  })

  it('keep what was typed while the one before was on its way', async () => {
    const book = optionBook(hourRates())
    const store = useOptionsStore()
    await store.read(7)
    store.editEntry(0, { siteVisits: 2 })
    const sent = store.send()
    await Promise.resolve()
    store.editEntry(0, { siteVisits: 3 })
    await sent
    expect(store.chosen?.entry.siteVisits).toBe(3)
    await pause(rest)
    expect(book.rows).toMatchObject([{ id: 40, version: 2, entry: { siteVisits: 3 } }])
  })

  it('are held while the book doesn’t answer, and sent when it does', async () => {
    const book = optionBook(hourRates())
    const store = useOptionsStore()
    await store.read(7)
    book.silent = true
    store.editEntry(0, { kilometres: 31 })
    await store.send()
    expect(store.trouble).toContain('isn’t answering')
    expect(store.chosen?.entry.kilometres).toBe(31)
    book.silent = false
    await store.send()
    expect(store.trouble).toBe('')
    expect(book.rows[0]?.entry.kilometres).toBe(31)
  })

  it('take another window’s version when theirs was written over first, and say so', async () => {
    const book = optionBook(hourRates())
    const store = useOptionsStore()
    await store.read(7)
    store.editEntry(0, { kilometres: 5 })
    await store.send()
    const [row] = book.rows
    if (!row) throw new Error('the book has the version')
    book.rows = [{ ...row, version: 9, entry: { ...row.entry, kilometres: 77 } }]
    store.editEntry(40, { kilometres: 6 })
    await store.send()
    expect(store.trouble).toContain('another window')
    expect(store.chosen?.entry.kilometres).toBe(77)
  })

  it('are added beside the gate as drawn, which gets its row first', async () => {
    const book = optionBook(hourRates())
    const store = useOptionsStore()
    await store.read(7)
    const extra = { id: '1', words: 'Skip', pence: pence(4510), group: 'making' as const }
    store.editEntry(0, { extras: [extra] })
    await store.add({ name: 'In larch', spec: null, entry: store.options[0]?.entry ?? expect.fail() })
    expect(book.rows.map(({ name }) => name)).toEqual(['As drawn', 'In larch'])
    expect(book.rows.map(({ entry }) => entry.extras)).toEqual([[extra], [extra]])
    expect(store.chosen?.name).toBe('In larch')
    await store.remove(store.chosen?.id ?? 0)
    expect(store.options.map(({ name }) => name)).toEqual(['As drawn'])
    expect(store.chosen?.name).toBe('As drawn')
  })
})
