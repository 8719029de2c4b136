import type { LengthUnit, Stage } from '../../shared/job/job.ts'
import type { SampleQuotation } from './sampleQuotations.ts'
import { sampleCustomers, type SampleCustomer } from './sampleCustomers.ts'
import {
  acceptedStoreDoor,
  finishedSideGate,
  lapsedHatch,
  oakOrLarch,
  plainQuotation,
} from './sampleQuotations.ts'
import {
  larchBoards,
  thinBoards,
  narrowBoards,
  wideBoards,
  oakBoards,
  stoutLedges,
  narrowLedges,
  oakLedges,
  stoutBraces,
  oakBraces,
  strapHinges,
  thumbLatch,
} from './sampleTimber.ts'

/**
 * One job of the made-up workshop. takenIn and due count days from the day the sample is made, due null for none promised. width and height are
 * the words the customer used; gate lists what differs from the standard gate, by its path. card: its job card is issued; said: notes by day, as
 * days from today, the time and the words.
 */
export type SampleJob = {
  customer: SampleCustomer
  title: string
  stage: Stage
  takenIn: number
  due: number | null
  unit: LengthUnit
  width?: string
  height?: string
  gate?: Record<string, unknown>
  notes?: string
  said?: [day: number, at: string, words: string][]
  card?: boolean
  quotation?: SampleQuotation
}

const ledgedOnly = { construction: 'ledged', braces: null }
const people = sampleCustomers

/** The jobs of the made-up workshop, the oldest first. */
export const sampleJobs: SampleJob[] = [
  {
    customer: people.thimblecroft,
    title: 'Side gate',
    stage: 'hung',
    takenIn: -96,
    due: -40,
    unit: 'mm',
    width: '915',
    height: '1.8 m',
    gate: { 'boards.rip': 'both', hung: 'left', ironmongery: [strapHinges(450, 1.3), thumbLatch] },
    notes: 'Wants the same again for the other side next spring.',
    said: [
      [
        -95,
        '17:40',
        'Rang after work. The old post leans 20 mm towards the house at the top; the other is sound.',
      ],
      [-40, '16:10', 'Hung. Swings shut by itself. Showed how the latch is oiled.'],
    ],
    quotation: finishedSideGate,
  },
  {
    customer: people.dovetail,
    title: 'Meter cupboard door',
    stage: 'hung',
    takenIn: -75,
    due: -31,
    unit: 'mm',
    width: '60 cm',
    height: '900',
    gate: {
      ...ledgedOnly,
      'boards.section': thinBoards,
      'boards.rip': 'both',
      'fixings.lengths': [25, 30, 35, 40],
    },
  },
  {
    customer: people.pinchbeam,
    title: 'Garden gate by the quince',
    stage: 'making',
    takenIn: -38,
    due: 4,
    unit: 'in',
    width: '36 5/8"',
    height: `5' 11"`,
    gate: { 'boards.rip': 'both', ironmongery: [strapHinges(450, 1.3), thumbLatch] },
    notes: 'Sizes are the leaf’s, not the opening’s. Ring before coming: the dog is loose.',
    card: true,
  },
  {
    customer: people.lathe,
    title: 'Passage gate, braces in line',
    stage: 'making',
    takenIn: -33,
    due: 9,
    unit: 'mm',
    width: '1050',
    height: '1980',
    gate: {
      hung: 'left',
      'boards.rip': 'both',
      'boards.section': larchBoards,
      'ledges.count': 3,
      'ledges.section': stoutLedges,
      'braces.section': stoutBraces,
      'braces.run': 'in-line',
      'fixings.lengths': [35, 40, 45, 50, 55, 60],
    },
    card: true,
  },
  {
    customer: people.allotments,
    title: 'Gate to the lower orchard, wide enough for the big barrow and the apple crates',
    stage: 'ordered',
    takenIn: -27,
    due: 16,
    unit: 'mm',
    width: '1200+45',
    height: '1200',
    gate: {
      'boards.rip': 'both',
      'ledges.count': 3,
      'braces.run': 'each-bay',
      'boards.section': wideBoards,
      hung: 'left',
    },
    notes: 'Lower than they first wanted; the braces lie flat. Talk it over before cutting.',
  },
  {
    customer: people.spokeshave,
    title: 'Shed door',
    stage: 'ordered',
    takenIn: -24,
    due: 19,
    unit: 'mm',
    width: '838',
    height: '1981',
    gate: {
      'boards.rip': 'hanging',
      'boards.tongues': 'to-hanging',
      'ledges.count': 3,
      'ledges.end': { cut: 'square' },
    },
  },
  {
    customer: people.mortise,
    title: 'Cellar hatch',
    stage: 'quoted',
    takenIn: -64,
    due: null,
    unit: 'mm',
    width: '700',
    height: '950',
    gate: { ...ledgedOnly, 'boards.rip': 'both', 'boards.section': narrowBoards },
    notes: 'Waiting for the committee.',
    quotation: lapsedHatch,
  },
  {
    customer: people.lathe,
    title: 'Apple store door',
    stage: 'quoted',
    takenIn: -20,
    due: 34,
    unit: 'mm',
    width: '860',
    height: '1900',
    gate: { 'boards.rip': 'both', 'ledges.count': 3, ironmongery: [strapHinges(450, 1.3), thumbLatch] },
    quotation: acceptedStoreDoor,
  },
  {
    customer: people.copeau,
    title: 'Portillon du potager',
    stage: 'quoted',
    takenIn: -18,
    due: 30,
    unit: 'mm',
    width: '1,05 m',
    height: '1,6 m',
    gate: {
      'boards.rip': 'both',
      hung: 'left',
      'boards.section': narrowBoards,
      ironmongery: [strapHinges(600, 1.9)],
    },
    notes: 'Écrit en français; la réponse aussi, s’il vous plaît.',
    quotation: plainQuotation,
  },
  {
    customer: people.gimlet,
    title: 'Oak gate for the churchyard path',
    stage: 'quoted',
    takenIn: -16,
    due: null,
    unit: 'in',
    width: `3' 6"`,
    height: `6'`,
    gate: {
      'boards.rip': 'both',
      'boards.section': oakBoards,
      'ledges.section': oakLedges,
      'braces.section': oakBraces,
      'ledges.count': 3,
      'fixings.lengths': [40, 45, 50, 55, 60],
      ironmongery: [strapHinges(600, 1.9), thumbLatch],
    },
    quotation: oakOrLarch,
  },
  {
    customer: people.bevelstone,
    title: 'Yard door, as tall as the wall',
    stage: 'designed',
    takenIn: -12,
    due: 41,
    unit: 'in',
    width: '33 1/4"',
    height: `8'`,
    gate: { 'boards.rip': 'both', 'ledges.count': 3, 'braces.run': 'each-bay', hung: 'left' },
  },
  {
    customer: people.thimblecroft,
    title: 'Gate for the far side, to match the first',
    stage: 'designed',
    takenIn: -10,
    due: 45,
    unit: 'mm',
    width: '930',
    height: '1800',
    gate: { 'boards.rip': 'closing' },
    notes:
      'As it stands the last board would be ripped to a sliver: rip at both edges, or ask for another width.',
  },
  {
    customer: people.rebate,
    title: 'Hatch for the hen run',
    stage: 'surveyed',
    takenIn: -6,
    due: 12,
    unit: 'in',
    width: '12"',
    height: `1' 6"`,
    gate: {
      ...ledgedOnly,
      'boards.rip': 'both',
      'boards.section': narrowBoards,
      'ledges.section': narrowLedges,
      'ledges.count': 2,
      'ledges.heights': [88, 369],
      'ledges.end': { cut: 'square' },
    },
  },
  {
    customer: people.mortise,
    title: 'Bin store door',
    stage: 'surveyed',
    takenIn: -4,
    due: 26,
    unit: 'mm',
    width: '112 cm',
    height: '1350',
    gate: {
      'boards.rip': 'both',
      'ledges.end': { cut: 'splayed', angle: 12 },
      fixings: { kind: 'nail', diameter: 3.35, lengths: [50, 55, 60, 65, 75] },
    },
  },
  {
    customer: people.dovetail,
    title: 'Gate between the two gardens',
    stage: 'enquiry',
    takenIn: -2,
    due: null,
    unit: 'mm',
    width: '1000',
    notes: 'Height to follow once the wall is capped.',
  },
  { customer: people.nobody, title: '', stage: 'enquiry', takenIn: 0, due: null, unit: 'mm' },
]
