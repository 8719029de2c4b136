/** What the price book holds: timber by section, ironmongery, fixings, finish, and the workshop's own rates for work. */
export const itemKinds = ['timber', 'ironmongery', 'fixing', 'finish', 'work'] as const
export type ItemKind = (typeof itemKinds)[number]

/** A section as a merchant sells it, mm. width is the cover of a board (its tongue left out). A planed square piece has no tongue. */
export type TimberFacts = {
  use: 'boards' | 'ledges' | 'braces' | 'frame' | 'other'
  species: string
  exThickness: number
  exWidth: number
  thickness: number
  width: number
  tongue: number | null
  groove: number | null
  treated: boolean
}

/** piece: the list's id of the piece of ironmongery this prices ('tee-450-galvanised'), null for a piece of the workshop's own. */
export type IronmongeryFacts = { piece: string | null }

/** A screw, nail or bolt by its size, mm. */
export type FixingFacts = { form: 'screw' | 'nail' | 'bolt' | 'other'; diameter: number; length: number }

/** A finish: m² that a litre covers in one coat, and how many coats it is put on in. */
export type FinishFacts = { coverage: number; coats: number }

/** The workshop's own rates. hour: work at the bench; site hour: measuring, hanging; kilometre: the van; visit: a call-out sum. */
export const workRates = ['hour', 'site hour', 'kilometre', 'visit'] as const
export type WorkRate = (typeof workRates)[number]
export type WorkFacts = { rate: WorkRate }

export type FactsOf = {
  timber: TimberFacts
  ironmongery: IronmongeryFacts
  fixing: FixingFacts
  finish: FinishFacts
  work: WorkFacts
}

/** A line of the price book, whoever sells it. retired: no longer offered, its prices kept for ever. sample: of the invented sample book. */
export type PriceItem = {
  [K in ItemKind]: {
    id: number
    kind: K
    name: string
    facts: FactsOf[K]
    retired: boolean
    sample: boolean
  }
}[ItemKind]
export type ItemOf<K extends ItemKind> = Extract<PriceItem, { kind: K }>

export type Supplier = { id: number; name: string; phone: string; notes: string; sample: boolean }

/**
 * How a supplier keeps an item: its code, the lengths kept where it is sold by the metre (mm, shortest first), and whether the
 * workshop usually buys it there. At most one supplier of an item is the usual one.
 */
export type Supply = { itemId: number; supplierId: number; code: string; lengths: number[]; usual: boolean }
