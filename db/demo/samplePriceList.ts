import { catalogue } from '../../shared/ironmongery/catalogue.ts'
import type { CatalogueEntry } from '../../shared/ironmongery/entry.ts'
import { standardSections } from '../../shared/gate/standardSpec.ts'
import type { Section } from '../../shared/gate/spec.ts'
import type { TimberFacts, WorkRate } from '../../shared/pricing/item.ts'
import type { PriceUnit } from '../../shared/pricing/price.ts'
import {
  larchBoards,
  narrowBoards,
  narrowLedges,
  oakBoards,
  oakBraces,
  oakLedges,
  stoutBraces,
  stoutLedges,
  strapHinges,
  thinBoards,
  thumbLatch,
  wideBoards,
} from './sampleTimber.ts'

const madeUp = 'Made up, with made-up prices, so that there is something to try.'

/** Merchants that nobody can buy from. Numbers from 01632 960000 on are kept free for made-up people by the British telephone regulator. */
export const sampleSuppliers = {
  sawmill: { name: 'Wychwhistle Sawmill (made up)', phone: '01632 960201', notes: madeUp },
  yard: { name: 'Plumbline Timber Yard (made up)', phone: '01632 960202', notes: madeUp },
  smith: { name: 'Clinker & Tang Ironmongers (made up)', phone: '01632 960203', notes: madeUp },
}
export type SampleSupplier = keyof typeof sampleSuppliers

/** A line of timber: its section, what it is for, its sawn size, pence a metre two years ago by who sells it, the usual one first. */
export type SampleTimber = {
  section: Section
  use: TimberFacts['use']
  ex: [thickness: number, width: number]
  pence: [SampleSupplier, number][]
}

const frame = (name: string, width: number): Section => ({
  name,
  species: 'European redwood',
  thickness: 48,
  width,
})

/** Every section that a sample gate is made from, and those a frame starts with. */
export const sampleTimberPrices: SampleTimber[] = [
  {
    section: standardSections.boards,
    use: 'boards',
    ex: [25, 125],
    pence: [
      ['sawmill', 232],
      ['yard', 248],
    ],
  },
  {
    section: narrowBoards,
    use: 'boards',
    ex: [25, 100],
    pence: [
      ['sawmill', 196],
      ['yard', 204],
    ],
  },
  {
    section: wideBoards,
    use: 'boards',
    ex: [25, 150],
    pence: [
      ['sawmill', 281],
      ['yard', 299],
    ],
  },
  { section: thinBoards, use: 'boards', ex: [19, 125], pence: [['sawmill', 184]] },
  { section: larchBoards, use: 'boards', ex: [25, 125], pence: [['sawmill', 318]] },
  { section: oakBoards, use: 'boards', ex: [32, 125], pence: [['yard', 1145]] },
  {
    section: standardSections.ledges,
    use: 'ledges',
    ex: [32, 150],
    pence: [
      ['sawmill', 342],
      ['yard', 351],
    ],
  },
  { section: narrowLedges, use: 'ledges', ex: [32, 100], pence: [['sawmill', 229]] },
  {
    section: stoutLedges,
    use: 'ledges',
    ex: [38, 150],
    pence: [
      ['sawmill', 407],
      ['yard', 418],
    ],
  },
  { section: oakLedges, use: 'ledges', ex: [38, 150], pence: [['yard', 1630]] },
  { section: stoutBraces, use: 'braces', ex: [38, 100], pence: [['sawmill', 271]] },
  { section: oakBraces, use: 'braces', ex: [38, 100], pence: [['yard', 1088]] },
  { section: frame('ex 50 × 100', 95), use: 'frame', ex: [50, 100], pence: [['sawmill', 366]] },
  { section: frame('ex 50 × 125', 120), use: 'frame', ex: [50, 125], pence: [['sawmill', 458]] },
]

/** Lengths that both merchants keep, mm. */
export const sampleLengths = [2400, 3000, 3600, 3900, 4200, 4800, 5400]

const finishShare = { 'black japanned': 1, galvanised: 0.92, stainless: 2.35 }

/** Something the smith sells: by what, and what it cost two years ago. */
export type SamplePiece = { name: string; piece: string | null; unit: PriceUnit; pence: number }

/** By weight and finish, to five pence: invented like the pieces. Hinges by the pair. */
function pieceOf({ id, name, kind, massKg, finish }: CatalogueEntry): SamplePiece {
  const each = 5 * Math.round(((260 + 1020 * massKg) * finishShare[finish]) / 5)
  const hinge = kind === 'hinge'
  return { name, piece: id, unit: hinge ? 'pair' : 'each', pence: hinge ? 2 * each : each }
}

/** Every piece of the ironmongery list, and those the sample gates name in their own words. */
export const sampleIronmongery: SamplePiece[] = [
  ...catalogue.map(pieceOf),
  { name: strapHinges(450, 1.3).name, piece: null, unit: 'pair', pence: 2980 },
  { name: strapHinges(600, 1.9).name, piece: null, unit: 'pair', pence: 3940 },
  { name: thumbLatch.name, piece: null, unit: 'each', pence: 1165 },
]

export type SampleFixing = {
  name: string
  form: 'screw' | 'nail'
  diameter: number
  length: number
  inBox: number
  pence: number
}

const screws = ([4, 5, 6] as const).flatMap((diameter) =>
  [25, 30, 35, 40, 45, 50, 55, 60, 70, 80].map((length): SampleFixing => ({
    name: `Stainless screw ${diameter} × ${length}`,
    form: 'screw',
    diameter,
    length,
    inBox: 200,
    pence: 5 * Math.round((420 + 1.9 * diameter * length) / 5),
  })),
)
const nails = [50, 55, 60, 65, 75].map((length): SampleFixing => ({
  name: `Galvanised clout nail 3.35 × ${length}`,
  form: 'nail',
  diameter: 3.35,
  length,
  inBox: 250,
  pence: 380 + 6 * length,
}))

/** Screws and nails by the box. */
export const sampleFixings: SampleFixing[] = [...screws, ...nails]

/** Finishes by the tin: litres and pence. */
export const sampleFinishes: { name: string; coverage: number; coats: number; tins: [number, number][] }[] = [
  {
    name: 'Hedgerow gate oil, clear',
    coverage: 12,
    coats: 2,
    tins: [
      [1, 1480],
      [2.5, 3250],
      [5, 5890],
    ],
  },
  {
    name: 'Harvest gate stain, dark',
    coverage: 14,
    coats: 3,
    tins: [
      [1, 1620],
      [2.5, 3590],
      [5, 6480],
    ],
  },
]

/** What the made-up workshop charged for its own work two years ago. */
export const sampleRates: { name: string; rate: WorkRate; unit: PriceUnit; pence: number }[] = [
  { name: 'An hour at the bench', rate: 'hour', unit: 'hour', pence: 3400 },
  { name: 'An hour on site', rate: 'site hour', unit: 'hour', pence: 3900 },
  { name: 'The van, a kilometre', rate: 'kilometre', unit: 'kilometre', pence: 42 },
  { name: 'A call-out', rate: 'visit', unit: 'visit', pence: 1500 },
]
