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

/** A cut: each part as often as `times` says, over a common divisor, rounded up for a pattern and for all that is wanted. */
export type CutRow = { times: number[]; over: number }

/**
 * A row of a list's cases, each divided one followed by those of its fewer, then by those of its more: by how many of an offer are taken, or how
 * often a pattern is cut from it, up to a number or more; or closed by the values standing at `by`.
 */
export type ListCase =
  { offer: number; upTo: number } | { pattern: number[]; of: number; upTo: number } | { by: number }

/** A list of the patterns that a plan of up to `most` pence may use, by the duals beside it. values: of parts and cuts, and of a length of each offer. */
export type ListProof = {
  most: number
  cuts: CutRow[]
  values: { duals: number[]; slots: number[] }[]
  cases: ListCase[]
}

/**
 * A row of why no plan can cost less, in the same order. Divided by how many of an offer are taken (up to a number, or more); closed by one dual a
 * part, in whole shares of a penny (2²⁴ make one), or past them by a list of patterns, looked through.
 */
export type ProofRow = { offer: number; upTo: number } | { duals: number[]; list?: ListProof }

/**
 * What is shown for one section: parts are the distinct lengths that duals stand beside, mm; offers are counted together, as one with the longest
 * length and the lowest price among them: every one that is to be had is named.
 */
export type Certificate = {
  section: string
  cost: number
  bound: number
  parts: number[]
  offers: Offer[][]
  proof: ProofRow[]
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
