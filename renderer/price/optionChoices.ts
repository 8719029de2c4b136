import type { GateSpec, Ironmongery, Section } from '../../shared/gate/spec.ts'
import { parseSpec } from '../../shared/gate/parseSpec.ts'
import { build, type Reshaping } from '../../shared/gate/reshape.ts'
import { catalogue } from '../../shared/ironmongery/catalogue.ts'
import type { CatalogueEntry, Finish } from '../../shared/ironmongery/entry.ts'
import { placedAt } from '../../shared/job/specPath.ts'

/** A copy of a gate with changes made that only make sense together; the gate as it was where they don't read as one. */
export function reshaped(spec: GateSpec, changes: readonly Reshaping[]): GateSpec {
  const made = changes.reduce<unknown>(
    (now, { path, value }) => placedAt(now, path.split('.').slice(1), value ?? undefined),
    spec,
  )
  const read = parseSpec(made)
  return read.ok ? read.value : spec
}

export type SectionUse = 'boards' | 'ledges' | 'braces'

/** The section an option uses for a part; undefined where its construction has none. */
export const sectionOf = (spec: GateSpec, use: SectionUse): Section | undefined => spec[use]?.section

/** The same gate in another section for one part. */
export const withSection = (spec: GateSpec, use: SectionUse, section: Section): GateSpec =>
  reshaped(spec, [{ path: `spec.${use}.section`, value: { ...section } }])

/** The same gate built another way. */
export const withConstruction = (
  spec: GateSpec,
  to: GateSpec['construction'],
  brace: Section | undefined,
): GateSpec => reshaped(spec, build(spec, to, brace))

const inList = (piece: Ironmongery): CatalogueEntry | undefined => catalogue.find(({ id }) => id === piece.id)

/** Another piece of the list in a piece's place: as many, at the same side, in the same places. */
const inPlaceOf = (piece: Ironmongery, entry: CatalogueEntry): Ironmongery => ({
  id: entry.id,
  kind: entry.kind,
  name: entry.name,
  quantity: piece.quantity,
  massKg: entry.massKg,
  ...(piece.side ? { side: piece.side } : {}),
  ...(piece.heights ? { heights: piece.heights } : {}),
  ...(entry.kind === 'hinge' ? { strapLength: entry.strapLength, maxLeafMassKg: entry.maxLeafMassKg } : {}),
})

/** The same gate with another piece of the list in one place, or with none there. */
export function withPiece(spec: GateSpec, index: number, id: string | null): GateSpec {
  const entry = catalogue.find((one) => one.id === id)
  return {
    ...spec,
    ironmongery: spec.ironmongery.flatMap((piece, at) => {
      if (at !== index) return [piece]
      return entry ? [inPlaceOf(piece, entry)] : []
    }),
  }
}

/** The finish all of a gate's ironmongery has, where it is one. */
export function finishOf(spec: GateSpec): Finish | undefined {
  const finishes = new Set(spec.ironmongery.map((piece) => inList(piece)?.finish))
  return finishes.size === 1 ? [...finishes][0] : undefined
}

const otherFinish = (piece: Ironmongery, finish: Finish): CatalogueEntry | undefined => {
  const entry = inList(piece)
  const stem = entry?.id.slice(0, -entry.finish.length)
  return catalogue.find((one) => one.finish === finish && one.id === `${stem}${finish.replace(' ', '-')}`)
}

/** The same pieces in another finish; a piece that isn't to be had in it stays as it is. */
export const inFinish = (spec: GateSpec, finish: Finish): GateSpec => ({
  ...spec,
  ironmongery: spec.ironmongery.map((piece) => {
    const entry = otherFinish(piece, finish)
    return entry ? inPlaceOf(piece, entry) : piece
  }),
})
