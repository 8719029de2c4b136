import type { RequestName } from './contract.ts'

/**
 * Every request's name without its parser, so that the window's bridge stays a few lines long. The type makes a request
 * that is missing here, or that the contract doesn't know, fail to compile.
 */
const carried: Readonly<Record<RequestName, true>> = {
  'book.summary': true,
  'jobs.list': true,
  'jobs.open': true,
  'jobs.create': true,
  'jobs.change': true,
  'jobs.repeat': true,
  'customers.find': true,
  'papers.list': true,
  'papers.issue': true,
  'papers.bytes': true,
  'papers.draft': true,
  'papers.sheet': true,
  'papers.compare': true,
  'settings.change': true,
  'sections.list': true,
  'sections.add': true,
  'sections.change': true,
  'sections.remove': true,
  'sample.remove': true,
  'prices.book': true,
  'prices.addItem': true,
  'prices.changeItem': true,
  'prices.retireItem': true,
  'prices.addSupplier': true,
  'prices.changeSupplier': true,
  'prices.supply': true,
  'prices.preview': true,
  'prices.apply': true,
  'prices.rises': true,
  'prices.undo': true,
  'options.list': true,
  'options.add': true,
  'options.change': true,
  'options.remove': true,
  'quotations.draft': true,
  'quotations.issue': true,
  'quotations.money': true,
  'quotations.accept': true,
  'quotations.requote': true,
  'workDone.list': true,
  'workDone.add': true,
  'workDone.remove': true,
  'workDone.record': true,
}

/** The names the window may call, in the contract's order. */
export const carriedNames = Object.keys(carried) as RequestName[]
