import type { OpenedBook } from '../../electron/openedBook.ts'
import { standardSections } from '../../shared/gate/standardSpec.ts'
import { timberItem } from '../fixtures/prices.ts'
import { buyingPlan } from '../../shared/cutting/buyingPlan/plan.ts'
import { scriptWords } from './scriptWords.ts'
import { asked, carried, prepare, type Prepared } from './workshopBook.ts'

/** The words of one job's fields, each another of the forty, so that any forty jobs have every one of them in every field. */
export const wordAt = (place: number): string => scriptWords[place % scriptWords.length] ?? ''

const fields = [
  'customer.name',
  'customer.address',
  'customer.town',
  'customer.phone',
  'customer.email',
] as const

/** The words each field of a job holds, by its path. */
export const jobWords = (place: number): Record<string, string> =>
  Object.fromEntries([...fields, 'title', 'notes'].map((field, turn) => [field, wordAt(place + turn)]))

async function addJob(open: OpenedBook, place: number): Promise<number> {
  const words = { customerName: wordAt(place), town: '', phone: '', title: wordAt(place), due: null }
  const { id } = await asked(open, 'jobs.create', words)
  const { boards, ledges, braces } = standardSections
  const hinge = {
    id: 'h',
    kind: 'hinge',
    name: wordAt(place + 10),
    quantity: 2,
    massKg: 1.5,
    strapLength: 450,
  }
  const changes = [
    ...Object.entries(jobWords(place)).map(([path, value]) => ({ path, value })),
    { path: 'spec.size.width', value: 900 + place },
    { path: 'spec.size.height', value: 1800 },
    { path: 'spec.boards.section', value: { ...boards, name: wordAt(place + 7) } },
    { path: 'spec.ledges.section', value: { ...ledges, name: wordAt(place + 8) } },
    { path: 'spec.braces.section', value: { ...braces, name: wordAt(place + 9) } },
    { path: 'spec.ironmongery', value: [hinge] },
    { path: 'spec.workshop.saws', value: [{ name: wordAt(place + 11), kerf: 3, tooth: 5 }] },
  ]
  await asked(open, 'jobs.change', { id, changes })
  return id
}

async function priceAndIssue(open: OpenedBook, id: number, place: number): Promise<void> {
  const [option] = await asked(open, 'options.list', { jobId: id })
  const entry = {
    ...{ overrules: {}, chosen: {}, finish: null, siteVisits: 0, kilometres: 0, discount: null },
    ...{ profit: null, depositBp: null },
    extras: [{ id: 'e', words: wordAt(place + 12), pence: 1250, group: 'making' }],
  }
  const named = { name: wordAt(place + 13), spec: null, entry }
  if (option) await asked(open, 'options.change', { id: option.id, version: option.version, option: named })
  else await asked(open, 'options.add', { jobId: id, option: named })
  const done = { what: 'hours', group: 'making', operation: 'rip', quantity: 1, on: '2026-03-02' }
  await asked(open, 'workDone.add', { jobId: id, ...done, note: wordAt(place + 14) })
  const { version } = await asked(open, 'jobs.open', { id })
  await asked(open, 'papers.issue', { jobId: id, format: 'a4', version })
}

async function fillLists(open: OpenedBook, { items }: Prepared): Promise<void> {
  for (const [place, words] of scriptWords.entries()) {
    await asked(open, 'prices.addSupplier', {
      name: words,
      phone: wordAt(place + 1),
      notes: wordAt(place + 2),
    })
    await asked(open, 'prices.addItem', { ...timberItem(standardSections.boards, 'boards'), name: words })
    await asked(open, 'sections.add', { use: 'boards', section: { ...standardSections.boards, name: words } })
    const piece = { itemId: items['boards'], length: 700 + place, count: 1, jobId: null }
    await asked(open, 'rack.add', { ...piece, place: words, note: wordAt(place + 3) })
  }
}

const business = (place: number) => ({
  ...{
    address: wordAt(place),
    phone: wordAt(place + 1),
    email: wordAt(place + 2),
    website: wordAt(place + 3),
  },
  ...{ terms: wordAt(place + 4), included: wordAt(place + 5), notIncluded: wordAt(place + 6), logo: null },
})

async function orderFor(open: OpenedBook, jobId: number, note: string): Promise<number> {
  const { stamp, requests } = await asked(open, 'orders.task', { jobIds: [jobId] })
  const plan = requests.plain ? buyingPlan(requests.plain) : undefined
  if (!plan?.ok) throw new Error(`no plan: ${JSON.stringify(plan)}`)
  const order = { jobIds: [jobId], stamp, paired: false, plan: plan.value, note }
  return (await asked(open, 'orders.place', order)).id
}

/** A book in which every name is one of the forty: so many jobs, the first of them with papers, forty of everything else. Gives the jobs, an order, and a job with a quotation. */
export async function scriptBook(
  path: string,
  { jobs, issued }: { jobs: number; issued: number },
): Promise<{ jobs: number[]; order: number; quoted: number }> {
  const prepared = await prepare(path)
  const open = await carried(path)
  await asked(open, 'settings.change', { name: wordAt(0), business: business(15) })
  await fillLists(open, prepared)
  const ids: number[] = []
  for (let place = 0; place < jobs; place += 1) {
    const id = await addJob(open, place)
    if (place < issued) await priceAndIssue(open, id, place)
    ids.push(id)
  }
  const [standard = 0] = prepared.jobs
  await asked(open, 'jobs.change', { id: standard, changes: [{ path: 'customer.name', value: wordAt(22) }] })
  const order = await orderFor(open, standard, wordAt(23))
  const { version } = await asked(open, 'jobs.open', { id: standard })
  await asked(open, 'quotations.issue', { jobId: standard, format: 'a4', version })
  await open.close()
  return { jobs: ids, order, quoted: standard }
}
