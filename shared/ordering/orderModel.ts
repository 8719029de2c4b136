import type { BuyingPlan } from '../cutting/buyingPlan/planModel.ts'
import type { BuyRequest } from '../cutting/buyingPlan/request.ts'
import type { Stage } from '../job/job.ts'
import type { Missing } from '../pricing/estimate.ts'

/**
 * A job that timber may be ordered for. accepted: its quotation was; orderedOn: the number of the order its timber stands on, null for none;
 * hindrance: why nothing can be ordered for it yet, in plain words, null where it can. remark: what to know before ordering, where there is
 * anything.
 */
export type OrderCandidate = {
  jobId: number
  number: string
  customer: string
  title: string
  due: string | null
  stage: Stage
  accepted: boolean
  orderedOn: string | null
  hindrance: string | null
  /** Of the invented sample: never ordered for together with the workshop's own. */
  sample: boolean
  remark?: string
}

/** A section of the price book as it is bought. key stands for it in the buying request. */
export type TaskSection = {
  key: string
  itemId: number
  name: string
  species: string
  thickness: number
  width: number
}

/** Blanks of one part of one job. key is its section's; mark names them at the saw: '2026-014 board'. pair: two blanks that share one slanting cut, as one piece. */
export type TaskPart = {
  key: string
  mark: string
  jobId: number
  number: string
  part: string
  length: number
  quantity: number
}

/** A length a merchant keeps and its price on the day. key is its section's. */
export type TaskOffer = {
  key: string
  length: number
  pence: number
  supplierId: number | null
  supplier: string
  priceId: number
}

/**
 * A blank that no length holds: what it is, of which job, its length; longest: the longest blank that can be had, from a length of `of`, of which
 * `trim` is lost at the ends (none of a piece of the rack; the last saw cut meets the end, so no kerf is lost). All mm.
 */
export type TooLong = {
  part: string
  number: string
  length: number
  longest: number
  of: number
  from: 'merchant' | 'rack'
  trim: number
}

/** Timber of a job that nothing in the price book prices, or no length of which is known or long enough: it stands on no order. */
export type UnpricedTimber = {
  section: string
  species: string
  numbers: string[]
  why: Missing | 'no lengths kept'
  /** The longest of the blanks that are too long, where that is why. */
  tooLong: TooLong | null
}

/**
 * Two braces' blanks cut from one piece, the slanting cut between them made once. key is their section's; mark names the piece in a plan; of:
 * the marks of both blanks; lengths: theirs, mm. length: of both together, mm; saved: what the shared cut
 * spares beside two blanks with a saw cut between them, mm.
 */
export type BracePair = {
  key: string
  mark: string
  of: [string, string]
  lengths: [number, number]
  length: number
  saved: number
}

/**
 * What is to be bought for some jobs, before it is planned. requests.plain has every blank for itself; requests.paired has braces two and two
 * where that spares timber, null where none can be. stamp names what it was worked from: placing takes it back.
 */
export type OrderTask = {
  jobs: { jobId: number; number: string; customer: string; title: string }[]
  sections: TaskSection[]
  parts: TaskPart[]
  offers: TaskOffer[]
  rack: RackPiece[]
  pairs: BracePair[]
  unpriced: UnpricedTimber[]
  requests: { plain: BuyRequest; paired: BuyRequest | null }
  stamp: string
}

/** What is lost at the saw, mm, for the whole workshop. leastOffcut: a remnant this long or longer goes back to the rack. */
export type CuttingSettings = { kerf: number; endTrim: number; leastOffcut: number }

/**
 * An offcut or a whole length on the rack. place: where it lies, in the workshop's own words; jobId, jobNumber: the job it is left over from,
 * null for none; keptFor: the number of the order it is set aside for, null while it is free.
 */
export type RackPiece = {
  id: number
  itemId: number
  name: string
  species: string
  length: number
  place: string
  jobId: number | null
  jobNumber: string | null
  note: string
  addedOn: string
  keptFor: string | null
}

export const rackLeavings = ['cut up', 'scrapped', 'given away', 'not found'] as const
/** Why a piece left the rack. */
export type RackLeaving = (typeof rackLeavings)[number]

/** A row of what is asked of a merchant: count lengths at pence each; received: how many have come. */
export type OrderLine = {
  id: number
  itemId: number
  name: string
  species: string
  supplierId: number | null
  supplier: string
  length: number
  count: number
  pence: number
  received: number
}

/**
 * Lengths cut alike, as they were planned. rackPieceIds: the pieces where they come from the rack; done: how many have been cut. offcut: what
 * each leaves, mm.
 */
export type OrderLength = {
  id: number
  itemId: number
  name: string
  from: 'merchant' | 'rack'
  length: number
  count: number
  done: number
  rackPieceIds: number[]
  cuts: { length: number; mark: string }[]
  offcut: number
}

export type OrderState = 'placed' | 'received' | 'cut' | 'cancelled'

/** A line of the list of orders. cost in pence, before tax. */
export type OrderRow = {
  id: number
  number: string
  placedOn: string
  state: OrderState
  jobs: { jobId: number; number: string; customer: string }[]
  suppliers: string[]
  cost: number
  sample: boolean
}

/** An order, its plan frozen. pairs: braces cut two from one piece, [] where the plan has none. */
export type Order = OrderRow & {
  note: string
  plan: BuyingPlan
  request: BuyRequest
  pairs: BracePair[]
  lines: OrderLine[]
  lengths: OrderLength[]
}
