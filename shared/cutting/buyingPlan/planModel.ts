/** Where a length comes from: bought, or taken from the workshop's rack of offcuts. */
export type Source = 'merchant' | 'rack'

/** A kind of length on offer: its source, its full length in mm, and what one costs. */
export type Offer = { from: Source; stock: number; pence: number }

/**
 * Lengths cut alike. stock: the full length, mm; count: how many; cuts: longest first, with the marks they are for; offcut: what remains of
 * each, mm, after end trim and kerfs, never below 0; pence: what one costs.
 */
export type CutLength = Offer & {
  section: string
  count: number
  cuts: { length: number; mark?: string }[]
  offcut: number
}

/**
 * Why no plan can cost less. Cases divided by how many of an offer are taken (up to a number, or more); each closed by one dual a part, in
 * whole shares of a penny (2²⁴ make one), or by having looked through every packing into exactly those lengths.
 */
export type BoundProof =
  | { offer: number; upTo: number; fewer: BoundProof; more: BoundProof }
  | { duals: number[] }
  | { searched: number[] }

/**
 * What is shown for one section: parts are the distinct lengths that duals stand beside, mm; offers are counted together where parts fill them
 * alike at one price. An offer of the request that isn't named here holds no part, or is never cheaper than a named one.
 */
export type Certificate = {
  section: string
  cost: number
  bound: number
  parts: number[]
  offers: Offer[][]
  proof: BoundProof
}

/**
 * The cheapest lengths for a request. cost, bound in pence: no plan costs less than bound, and status is proven when they agree. waste in mm:
 * lengths bought less parts and offcuts worth keeping. patterns: ways of cutting a length that differ. shown says which of the three aims, in
 * their order, is proven to be the least: waste and patterns are made small at that cost, never proven.
 */
export type BuyingPlan = {
  version: 1
  status: 'proven' | 'best-found'
  cost: number
  bound: number
  waste: number
  patterns: number
  shown: { cost: boolean; waste: false; patterns: false }
  lengths: CutLength[]
  certificate: Certificate[]
}
