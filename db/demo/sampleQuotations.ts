import type { EstimateEntry } from '../../shared/pricing/terms.ts'
import type { WorkDone } from '../../shared/pricing/workDone.ts'
import { pence } from '../../shared/pricing/pence.ts'
import { sampleFinishes } from './samplePriceList.ts'
import { larchBoards, stoutBraces, stoutLedges } from './sampleTimber.ts'

/** What is put for one version of a sample gate: its finish by name, kilometres, lines of its own; gate lists what differs from the job's. */
export type SampleOption = {
  name: string
  gate?: Record<string, unknown>
  finish?: string
  entry?: Partial<EstimateEntry>
}

/**
 * A quotation of the made-up workshop. Days count from the day the sample is made. accepted: which option, when, in whose words. done: what the
 * job took in the end.
 */
export type SampleQuotation = {
  issued: number
  options: SampleOption[]
  accepted?: { option: number; on: number; note: string }
  done?: (Pick<WorkDone, 'what' | 'group' | 'operation' | 'quantity' | 'note'> & { on: number })[]
}

const oil = sampleFinishes[0]?.name

/** Open: one gate, oiled, a drive away. */
export const plainQuotation: SampleQuotation = {
  issued: -16,
  options: [{ name: 'As drawn', finish: oil, entry: { kilometres: 38 } }],
}

/** Open: the oak that was asked for beside larch, with a discount on the oak. */
export const oakOrLarch: SampleQuotation = {
  issued: -12,
  options: [
    {
      name: 'Oak',
      entry: { kilometres: 14, discount: { by: 'percent', bp: 300 } },
    },
    {
      name: 'Larch boards',
      gate: { 'boards.section': larchBoards, 'ledges.section': stoutLedges, 'braces.section': stoutBraces },
      finish: oil,
      entry: { kilometres: 14 },
    },
  ],
}

/** Lapsed: nobody answered in time. */
export const lapsedHatch: SampleQuotation = {
  issued: -58,
  options: [{ name: 'As drawn', entry: { kilometres: 6, siteVisits: 2 } }],
}

/** Accepted, its timber not ordered yet: a rise bears upon it. */
export const acceptedStoreDoor: SampleQuotation = {
  issued: -17,
  options: [
    {
      name: 'As drawn',
      finish: oil,
      entry: {
        kilometres: 22,
        extras: [{ id: 'old-door', words: 'Old door taken away', pence: pence(2500), group: 'hanging' }],
      },
    },
  ],
  accepted: { option: 0, on: -9, note: 'Rang to say yes, before the apples are in.' },
}

/** Made and hung: what it took stands beside what was reckoned. */
export const finishedSideGate: SampleQuotation = {
  issued: -92,
  options: [{ name: 'As drawn', entry: { kilometres: 9 } }],
  accepted: { option: 0, on: -88, note: 'By letter.' },
  done: [
    { what: 'hours', group: 'making', operation: 'rip', quantity: 0.4, note: '', on: -50 },
    {
      what: 'hours',
      group: 'making',
      operation: '',
      quantity: 5.25,
      note: 'One ledge cut twice: a shake in the first.',
      on: -49,
    },
    { what: 'hours', group: 'hanging', operation: '', quantity: 3, note: 'Post out of plumb.', on: -41 },
    { what: 'timber', group: 'timber', operation: '', quantity: 26.4, note: '', on: -51 },
  ],
}
