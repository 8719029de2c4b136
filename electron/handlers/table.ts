import type { RequestName } from '../../shared/contract.ts'
import { changeSettings, removeSample, summariseBook } from './book.ts'
import type { Handler } from './context.ts'
import { changeJob, createJob, findCustomers, listJobs, openJob, repeatJob } from './jobs.ts'
import { comparePapers, draftCard, issueCard, listPapers, printSheet, readPaper } from './papers.ts'
import { addSection, changeSection, listSections, removeSection } from './sections.ts'

/** Each request of the contract with the one function that answers it. A request without one doesn't compile. */
export const handlers: { readonly [N in RequestName]: Handler<N> } = {
  'book.summary': summariseBook,
  'jobs.list': listJobs,
  'jobs.open': openJob,
  'jobs.create': createJob,
  'jobs.change': changeJob,
  'jobs.repeat': repeatJob,
  'customers.find': findCustomers,
  'papers.list': listPapers,
  'papers.issue': issueCard,
  'papers.bytes': readPaper,
  'papers.draft': draftCard,
  'papers.sheet': printSheet,
  'papers.compare': comparePapers,
  'settings.change': changeSettings,
  'sections.list': listSections,
  'sections.add': addSection,
  'sections.change': changeSection,
  'sections.remove': removeSection,
  'sample.remove': removeSample,
}
