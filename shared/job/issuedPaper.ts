import type { Design } from '../gate/designModel.ts'
import type { Customer } from './job.ts'

/**
 * What stands at the head of a paper, frozen when it is issued. issuedAt is ISO, null on a draft, whose revision is the one it
 * would get; issuedOn the day of that by the workshop's own calendar, missing on papers from before it was kept.
 */
export type PaperHeader = {
  workshop: string
  number: string
  title: string
  customer: Omit<Customer, 'id'>
  due: string | null
  notes: string
  revision: number
  issuedAt: string | null
  issuedOn?: string | null
}

/** The parts a paper was drawn from, frozen with it: a later program must not work an old card out anew. */
export type PaperParts = Pick<Design, 'leaves' | 'cuts' | 'holes' | 'checks'>
