import type { Book } from '../../db/open.ts'
import { standardDraft, standardSections } from '../../shared/gate/standardSpec.ts'
import { stages } from '../../shared/job/job.ts'
import { pence } from '../../shared/pricing/pence.ts'
import { gate } from '../fixtures/gates.ts'
import { metrePrice, timberItem } from '../fixtures/prices.ts'

type Chance = () => number

/** One of a list, or undefined of an empty one. */
const one = <T>(from: readonly T[], chance: Chance): T | undefined => from[Math.floor(chance() * from.length)]
const mm = (chance: Chance, least: number, most: number): number =>
  Math.round((least + chance() * (most - least)) * 10) / 10

const entry = {
  ...{ overrules: {}, extras: [], chosen: {}, finish: null, siteVisits: 0, kilometres: 0, discount: null },
  ...{ profit: null, depositBp: 2500 },
}

const anyJob = (book: Book, chance: Chance) => one(book.jobs.list('', null).rows, chance)?.id
const anyItem = (book: Book, chance: Chance) =>
  one(
    book.prices.book().items.filter(({ kind }) => kind === 'timber'),
    chance,
  )

const change = (book: Book, chance: Chance, path: string, value: unknown, typed?: string): boolean => {
  const id = anyJob(book, chance)
  const change = { path, value, ...(typed === undefined ? {} : { typed }) }
  return id !== undefined && book.jobs.change(id, [change])?.ok === true
}

/** Deeds over every room, each of them one writing as a request makes it. Each says whether it did anything. */
const deeds: readonly ((book: Book, chance: Chance, turn: number) => unknown)[] = [
  (book, chance, turn) =>
    book.jobs.create({
      customer: { name: `Test ${turn}`, address: '', town: 'Nether Test', phone: `01632 ${turn}`, email: '' },
      ...{ title: `gate ${turn}`, due: null, unit: chance() < 0.3 ? 'in' : 'mm', spec: standardDraft() },
    }),
  (book, chance) => book.jobs.repeat(anyJob(book, chance) ?? 0),
  (book, chance) => change(book, chance, 'spec.size.width', mm(chance, 700, 1200)),
  (book, chance) => change(book, chance, 'spec.size.height', 1803.4, `5' 11"`),
  (book, chance, turn) => change(book, chance, 'notes', `mind step ${turn}\nand the cat`),
  (book, chance) => change(book, chance, 'stage', one(stages, chance)),
  (book, chance) => change(book, chance, 'unit', chance() < 0.5 ? 'in' : 'mm'),
  (book, chance, turn) => change(book, chance, 'customer.phone', `01632 9600${turn}`),
  (book, chance) => change(book, chance, 'spec.boards.gap', mm(chance, 0, 4)),
  (book, chance) => change(book, chance, 'spec.climate', null),
  (book, chance) => change(book, chance, 'due', `2026-0${1 + Math.floor(chance() * 9)}-14`),
  (book, chance, turn) =>
    book.options.add(anyJob(book, chance) ?? 0, { name: `option ${turn}`, spec: null, entry }),
  (book, chance, turn) => {
    const option = one(book.options.list(anyJob(book, chance) ?? 0), chance)
    const siteVisits = turn % 7
    return (
      option && book.options.change(option.id, option.version, { ...option, entry: { ...entry, siteVisits } })
    )
  },
  (book, chance) => book.options.remove(one(book.options.list(anyJob(book, chance) ?? 0), chance)?.id ?? 0),
  (book, chance) => {
    const jobId = anyJob(book, chance)
    const done = { what: 'hours', group: 'making', operation: 'rip', note: '', on: '2026-03-02' } as const
    return jobId && book.workDone.add({ jobId, ...done, quantity: mm(chance, 0.1, 5) })
  },
  (book, chance) => book.workDone.remove(one(book.workDone.list(anyJob(book, chance) ?? 0), chance)?.id ?? 0),
  (book, _chance, turn) => book.settings.change({ name: `Bench ${turn}` }),
  (book, chance) => {
    const { cutting } = book.settings.read()
    return book.settings.change({ cutting: { ...cutting, kerf: mm(chance, 2, 5) } })
  },
  (book, _chance, turn) => book.sections.add('boards', { ...standardSections.boards, name: `board ${turn}` }),
  (book, chance) => {
    const section = one(book.sections.list(), chance)
    return section && book.sections.change(section.id, { ...section.section, thickness: mm(chance, 14, 33) })
  },
  (book, chance) => book.sections.remove(one(book.sections.list(), chance)?.id ?? 0),
  (book, _chance, turn) => {
    const item = timberItem(standardSections.ledges, 'ledges')
    return book.prices.addItem({ ...item, name: `ledge ${turn}` })
  },
  (book, chance, turn) => {
    const item = anyItem(book, chance)
    const { kind, facts } = timberItem(standardSections.braces, 'braces')
    return item && book.prices.changeItem(item.id, { kind, facts, name: `brace ${turn}` })
  },
  (book, chance) => book.prices.retireItem(anyItem(book, chance)?.id ?? 0, chance() < 0.5),
  (book, _chance, turn) => book.prices.addSupplier({ name: `Yard ${turn}`, phone: '', notes: '' }),
  (book, chance, turn) => {
    const { suppliers } = book.prices.book()
    const [item, supplier] = [anyItem(book, chance), one(suppliers, chance)]
    if (!item || !supplier) return undefined
    const lengths = [3000, 3900 + turn]
    return book.prices.supply({
      itemId: item.id,
      supplierId: supplier.id,
      code: '',
      lengths,
      usual: chance() < 0.6,
    })
  },
  (book, chance) => {
    const { items, suppliers } = book.prices.book()
    const supplierId = one(suppliers, chance)?.id
    const prices = items
      .filter(({ kind }) => kind === 'timber')
      .map(({ id }) =>
        metrePrice(id, supplierId ?? 0, {
          pence: pence(200 + Math.floor(chance() * 300)),
          startsOn: '2026-03-05',
        }),
      )
    return (
      supplierId && prices.length > 0 && book.rises.add({ prices, origin: '4 % on all timber', stamp: null })
    )
  },
  (book, chance) => {
    const item = anyItem(book, chance)
    const piece = { place: 'door', jobId: null, note: '', addedOn: '2026-03-02' }
    return (
      item &&
      book.together(() => {
        for (let pieces = 0; pieces < 2; pieces += 1)
          book.rack.add({ ...piece, itemId: item.id, length: mm(chance, 300, 2400) })
        return true
      })
    )
  },
  (book, chance, turn) => {
    const piece = one(book.rack.list(), chance)
    return (
      piece &&
      book.rack.change(
        piece.id,
        { length: mm(chance, 300, 2400), place: `loft ${turn}`, note: '' },
        '2026-03-03',
      )
    )
  },
  (book, chance, turn) =>
    book.notes.add(anyJob(book, chance) ?? 0, { words: `draughty ${turn}`, on: '2026-03-02', at: '09:30' }),
  (book, chance, turn) => {
    const note = one(book.notes.list(anyJob(book, chance) ?? 0, true).notes, chance)
    return note && book.notes.mend(note.id, { words: `mended ${turn}`, on: '2026-03-03', at: note.at })
  },
  (book, chance) => {
    const note = one(book.notes.list(anyJob(book, chance) ?? 0, true).notes, chance)
    return note && book.notes.putAway(note.id, true)
  },
  (book, _chance, turn) => book.usualGates.add({ name: `usual ${turn}`, unit: 'mm', spec: gate }),
  (book, chance) => book.usualGates.remove(one(book.usualGates.list(), chance)?.id ?? 0),
  (book, chance) =>
    book.rack.take(one(book.rack.list(), chance)?.id ?? 0, { why: 'scrapped', on: '2026-03-04' }),
]

/** Does one random deed that wrote something as a deed; tries others where one found nothing to do. */
export function randomDeed(book: Book, chance: Chance, turn: number): void {
  const latest = () => book.undo.list(null).back[0]?.id ?? 0
  const before = latest()
  for (let tries = 0; tries < 200; tries += 1) {
    deeds[Math.floor(chance() * deeds.length)]?.(book, chance, turn)
    if (latest() !== before) return
  }
  throw new Error(`no deed of turn ${turn} did anything`)
}
