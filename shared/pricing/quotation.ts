import type { GateSpec } from '../gate/spec.ts'
import type { Estimate, OfferLine } from './estimate.ts'
import type { Needs, StandardTimes } from './needs.ts'
import type { EstimateEntry, MoneySettings } from './terms.ts'

/** A version of the job's gate to be priced. spec null: the job's own gate as it stands. position from 1. */
export type JobOption = {
  id: number
  jobId: number
  position: number
  name: string
  spec: GateSpec | null
  entry: EstimateEntry
  version: number
}

/** One option as it was quoted: frozen whole. description is the plain words written from the design. */
export type QuotedOption = {
  name: string
  spec: GateSpec
  description: string[]
  needs: Needs
  entry: EstimateEntry
  estimate: Estimate
  offer: OfferLine[]
}

/** All the money of a quotation, frozen with it. validUntil ISO. */
export type QuotedMoney = {
  settings: MoneySettings
  times: StandardTimes
  on: string
  validUntil: string
  options: QuotedOption[]
}

/** A quotation accepted: which option, when, in the customer's words or the joiner's. */
export type Acceptance = { paperId: number; option: number; acceptedOn: string; note: string }

/** One line of a quotation then and at today's prices. */
export type RequotedLine = { option: string; words: string; before: number | null; after: number | null }

/** What a rise does to a job that is quoted or accepted. before and after: what it costs the workshop and what it would be offered for now; quoted: the standing net offer; margins on that offer, basis points. */
export type RiseEffect = {
  jobId: number
  number: string
  customer: string
  title: string
  paperId: number
  stands: 'quoted' | 'accepted'
  option: string
  quoted: number
  costBefore: number
  costAfter: number
  marginBeforeBp: number
  marginAfterBp: number
}

/** A price line and what would become of it. old null: a first price. */
export type RiseLine = {
  itemId: number
  supplierId: number | null
  unit: string
  size: number | null
  words: string
  old: number | null
  new: number
  startsOn: string
}

/** What a rise would do, before anything is written. stamp names the book's prices it was worked from: apply takes it back. */
export type RisePreview = { lines: RiseLine[]; effects: RiseEffect[]; unchanged: number; stamp: string }
