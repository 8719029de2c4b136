import type { RequestName, Takes } from '../../shared/contract.ts'
import { standardSections } from '../../shared/gate/standardSpec.ts'
import { standardMoney } from '../../shared/pricing/standardMoney.ts'
import { standardTimes } from '../../shared/pricing/standardTimes.ts'
import { pence } from '../../shared/pricing/pence.ts'
import { orderingBook, placed, placing, receivedWhole } from '../handlers/anOrder.ts'
import type { Opened } from '../handlers/opened.ts'
import { wholeGates } from '../drawing/wholeGates.ts'
import { smallPhotograph } from '../fixtures/photograph.ts'
import { metrePrice, timberItem } from '../fixtures/prices.ts'

/** A payload for each request that it takes as it stands, on the book that goes with them. */
export type RightPayloads = { [N in RequestName]: Takes<N> }

const entry = {
  ...{ overrules: {}, extras: [], chosen: {}, finish: null, siteVisits: 0, kilometres: 0, discount: null },
  ...{ profit: null, depositBp: 2500 },
}
const words = {
  customerName: 'Peg Sash',
  town: 'Nether Test',
  phone: '01632 960001',
  title: 'Side gate',
  due: null,
}

/** Fills a book with one of everything, and gives a payload for every request of the contract. */
export async function rightPayloads(context: Opened): Promise<RightPayloads> {
  const book = await orderingBook(4, context)
  const { ask, jobs, items, supplier } = book
  const [first, second, third] = jobs.map(({ id }) => id)
  if (first === undefined || second === undefined || third === undefined) throw new Error('no jobs')
  const order = await placed(book, jobs.slice(0, 1))
  await receivedWhole(context, order)
  const later = await placed(book, jobs.slice(1, 2))
  const issue = {
    jobId: first,
    format: 'a4' as const,
    version: (await ask('jobs.open', { id: first })).version,
  }
  const card = await ask('papers.issue', issue)
  const quotation = await ask('quotations.issue', issue)
  const option = { name: 'In oak', spec: null, entry }
  const added = await ask('options.add', { jobId: first, option })
  const done = {
    ...{ jobId: first, what: 'hours' as const, group: 'making' as const, operation: 'rip', quantity: 1.5 },
    ...{ note: '', on: '2026-03-02' },
  }
  const worked = await ask('workDone.add', done)
  const [piece] = await ask('rack.add', {
    ...{ itemId: items['boards'] ?? 0, length: 1350, count: 2, place: 'door', jobId: null, note: '' },
  })
  const prices = [
    metrePrice(items['boards'] ?? 0, supplier, { pence: pence(231), startsOn: '2026-04-01' }),
    metrePrice(items['ledges'] ?? 0, supplier, { pence: pence(319), startsOn: '2026-04-01' }),
  ]
  const { stamp } = await ask('prices.preview', { prices })
  const [rise] = await ask('prices.rises', {})
  const { settings } = await ask('book.summary', {})
  const item = timberItem(standardSections.braces, 'braces')
  const supplierWords = { name: 'Test Timber', phone: '', notes: '' }
  const place = await placing(book, jobs.slice(2, 3))
  const carried = await ask('job.takeOut', { jobId: first, papers: true })
  const usual = wholeGates[0]?.spec
  const [keptGate] = await ask('usual.add', { name: 'Paddock gate', unit: 'mm', spec: usual })
  if (!keptGate) throw new Error('no usual gate')
  const note = await ask('notes.add', { jobId: first, words: 'Ring.', on: '2026-03-02', at: '14:05' })
  const photograph = await ask('photographs.add', { jobId: first, ...smallPhotograph, words: '' })
  const copy = { name: 'jobs 2026-03-02 0800 day.book' }
  await ask('sections.add', { use: 'boards', section: standardSections.boards })
  await ask('sections.add', { use: 'ledges', section: standardSections.ledges })
  const [deed] = (await ask('undo.list', { jobId: null })).back
  await ask('undo.back', { upTo: deed?.id ?? 0, jobId: null, settle: 'ask' })
  const { back, again } = await ask('undo.list', { jobId: null })
  return {
    'book.summary': {},
    'jobs.list': { search: 'gate', stage: 'enquiry', year: 2026, promised: 'no day' },
    'jobs.pieces': { rows: [{ id: first, words: ['mind', '01632'] }] },
    'jobs.board': { by: 'day' },
    'jobs.year': { year: 2026 },
    'jobs.years': {},
    'jobs.open': { id: first },
    'jobs.create': words,
    'jobs.change': {
      id: third,
      changes: [
        { path: 'spec.size.width', value: 991.5, was: 930.275, typed: '991.5' },
        { path: 'spec.boards.section', value: standardSections.boards },
        { path: 'notes', value: 'mind the step' },
        { path: 'customer.town', value: 'Much Test', was: 'Nether Test' },
      ],
    },
    'jobs.repeat': { id: first },
    'customers.find': { search: 'sash' },
    'papers.list': { jobId: first },
    'papers.issue': issue,
    'papers.bytes': { id: card.id },
    'papers.draft': { jobId: first, format: 'a4' },
    'papers.sheet': {
      jobId: first,
      format: 'letter',
      sheet: 'part labels',
      labels: { sheet: '24', start: 3 },
    },
    'papers.compare': { earlier: card.id, later: null },
    'settings.change': {
      ...settings,
      name: 'Test bench',
      money: { timberBy: 'lengths', ...standardMoney },
      times: standardTimes,
    },
    'sections.list': {},
    'sections.add': { use: 'boards', section: standardSections.boards },
    'sections.change': { id: 1, section: standardSections.ledges },
    'sections.remove': { id: 2 },
    'sample.remove': {},
    'prices.book': {},
    'prices.lines': {},
    'prices.some': { after: 0 },
    'prices.addItem': item,
    'prices.changeItem': { id: items['braces'] ?? 0, item },
    'prices.retireItem': { id: items['braces'] ?? 0, retired: true },
    'prices.addSupplier': supplierWords,
    'prices.changeSupplier': { id: supplier, supplier: supplierWords },
    'prices.supply': {
      ...{
        itemId: items['boards'] ?? 0,
        supplierId: supplier,
        code: 'B7',
        lengths: [3000, 4200],
        usual: true,
      },
    },
    'prices.preview': { prices },
    'prices.apply': { prices, origin: 'spring list', stamp },
    'prices.rises': {},
    'prices.undo': { riseId: rise?.id ?? 0 },
    'usual.list': {},
    'usual.add': { name: 'Field gate', unit: 'in', spec: usual },
    'usual.rename': { id: keptGate.id, name: 'Churchyard gate' },
    'usual.remove': { id: keptGate.id },
    'papers.gate': { id: card.id },
    'options.list': { jobId: first },
    'options.add': { jobId: second, option },
    'options.change': { id: added.id, version: added.version, option },
    'options.remove': { id: added.id },
    'quotations.draft': { jobId: first, format: 'a4' },
    'quotations.issue': issue,
    'quotations.money': { paperId: quotation.id },
    'quotations.accept': { paperId: quotation.id, option: 0, acceptedOn: '2026-03-05', note: '' },
    'quotations.requote': { paperId: quotation.id },
    'workDone.list': { jobId: first },
    'workDone.add': done,
    'workDone.remove': { id: worked.id },
    'workDone.record': {},
    'orders.candidates': {},
    'orders.task': { jobIds: [third] },
    'orders.place': place,
    'orders.list': {},
    'orders.open': { id: order.id },
    'orders.receive': {
      id: later.id,
      lines: later.lines.map((line) => ({ lineId: line.id, count: 1 })),
      receivedOn: '2026-03-09',
    },
    'orders.cut': {
      id: order.id,
      ...{ lengthId: order.lengths[0]?.id ?? 0, count: 1, offcuts: [], cutOn: '2026-03-10' },
    },
    'orders.cancel': { id: later.id },
    'rack.list': {},
    'rack.add': { itemId: items['ledges'] ?? 0, length: 900, count: 1, place: 'door', jobId: null, note: '' },
    'rack.change': { id: piece?.id ?? 0, length: 1340, place: 'loft', note: 'a shake' },
    'rack.take': { ids: [piece?.id ?? 0], why: 'cut up' },
    'rack.count': { seen: [{ id: piece?.id ?? 0, place: 'loft' }], notFound: [] },
    'papers.dayList': { jobIds: [first, second], format: 'a4' },
    'papers.order': { orderId: order.id, format: 'a4' },
    'job.handed': {},
    'book.takeOut': { folder: null },
    'book.lookInto': { folder: null },
    'book.bringIn': { folder: 'nowhere', replace: false },
    'book.inHand': {},
    'book.stopWork': {},
    'job.takeOut': { jobId: first, papers: true },
    'job.lookInto': { text: carried.text },
    'job.bringIn': { text: carried.text },
    'papers.uncovered': { jobId: first },
    'papers.part': { sha256: card.sha256, pages: [1], copies: 2 },
    'papers.print': { sha256: card.sha256, copies: 1 },
    'papers.due': {},
    'papers.dueCard': { jobId: first, format: 'a4', issue: false },
    'papers.gather': { cards: [card.sha256] },
    'papers.issueTogether': { cards: [card.sha256] },
    'keeping.state': {},
    'keeping.inside': copy,
    'keeping.copy': {},
    'keeping.restore': copy,
    'keeping.salvage': {},
    'keeping.fresh': {},
    'keeping.again': {},
    'keeping.chooseFolder': {},
    'keeping.backUp': { folder: '/media/test' },
    'keeping.putOff': {},
    'keeping.putAway': {},
    'keeping.goOver': {},
    'keeping.inHand': {},
    'keeping.stopWork': {},
    'keeping.putBack': { paperId: card.id },
    'undo.list': { jobId: first },
    'undo.back': { upTo: back[0]?.id ?? 0, jobId: null, settle: 'keep theirs' },
    'undo.again': { upTo: again[0]?.id ?? 0, jobId: null, settle: 'ask' },
    'book.pulse': {},
    'notes.list': { jobId: first, all: true },
    'notes.add': { jobId: first, words: 'Ring before coming.', on: '2026-03-02', at: '14:05' },
    'notes.mend': { id: note.id, words: 'Ring first.', on: '2026-03-03', at: '09:30' },
    'notes.putAway': { id: note.id, away: true },
    'photographs.list': { jobId: first },
    'photographs.add': { jobId: first, ...smallPhotograph, words: 'the post' },
    'photographs.bytes': { id: photograph.id },
    'photographs.describe': { id: photograph.id, words: 'the leaning post' },
    'photographs.putAway': { id: photograph.id, away: true },
    'happened.list': { jobId: first, kind: 'gate', before: 3 },
    'language.offered': {},
    'language.read': { tag: 'en-US' },
  }
}
