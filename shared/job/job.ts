import type { DraftSpec } from '../gate/spec.ts'
import type { PaperFormat } from '../papers/page.ts'

/** The job's stages, in order, from first call to the gate hung. */
export const stages = ['enquiry', 'surveyed', 'designed', 'quoted', 'ordered', 'making', 'hung'] as const
export type Stage = (typeof stages)[number]

export type LengthUnit = 'mm' | 'in'

export type Customer = {
  id: number
  name: string
  address: string
  town: string
  phone: string
  email: string
}

/**
 * What has been entered for the gate. spec is the truth; typed keeps the words each length came in, by path
 * ('size.width' → `5' 11"`), also those not understood yet, so that nothing typed is lost.
 */
export type GateEntry = { spec: DraftSpec; typed: Record<string, string> }

/** version counts changes: a window that holds an older one must read again. due and dates are ISO. */
export type Job = {
  id: number
  number: string
  customer: Customer
  title: string
  stage: Stage
  due: string | null
  notes: string
  unit: LengthUnit
  entry: GateEntry
  version: number
  createdAt: string
  updatedAt: string
  sample: boolean
}

/** A line of the job book. width and height are the leaf's, mm, null until given; accepted: a quotation of it was. */
export type JobRow = {
  id: number
  number: string
  customerId: number
  customer: string
  town: string
  title: string
  stage: Stage
  due: string | null
  unit: LengthUnit
  width: number | null
  height: number | null
  construction: string
  papers: number
  accepted: boolean
  updatedAt: string
  sample: boolean
}

/** An issued paper, without its bytes. */
export type Paper = {
  id: number
  jobId: number
  kind: 'job-card' | 'quotation'
  revision: number
  format: PaperFormat
  issuedAt: string
  engine: string
  sha256: string
  pages: number
  size: number
}

/** One thing that differs between two issues of a paper, or between a paper and the job as it stands. */
export type Difference = { what: string; before: string; after: string }

/**
 * One field changed. path is dotted: 'title', 'stage', 'due', 'notes', 'unit', 'customer.name', 'spec.size.width',
 * 'spec.braces' … value null removes an optional key of the spec. was is what the window believed stood there,
 * so that another window's edit is noticed. typed is the person's own words for a length; '' forgets them.
 */
export type Change = { path: string; value: unknown; was?: unknown; typed?: string }

/** A field that another window had changed meanwhile: theirs was replaced by mine, and is said. */
export type Overlap = { path: string; theirs: unknown; mine: unknown }
