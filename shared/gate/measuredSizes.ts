import type { DraftSpec } from './spec.ts'

/** A size that has to be measured before there is a gate: its path in the spec, what it is called, and mm or null until it is there. */
export type MeasuredSize = { path: string; called: string; mm: number | null }

const places = ['at the top', 'in the middle', 'at the foot']
const sides = ['at the hanging side', 'at the closing side']

/** The sizes of a leaf, or of an opening's survey, in the order they are measured. */
export function measuredSizes(size: DraftSpec['size']): MeasuredSize[] {
  if (size.from === 'leaf')
    return [
      { path: 'size.width', called: 'width of the leaf', mm: size.width },
      { path: 'size.height', called: 'height of the leaf', mm: size.height },
    ]
  return [
    ...size.widths.map((mm, i) => ({
      path: `size.widths.${i}`,
      called: `width of the opening ${places[i]}`,
      mm,
    })),
    ...size.heights.map((mm, i) => ({
      path: `size.heights.${i}`,
      called: `height of the opening ${sides[i]}`,
      mm,
    })),
  ]
}
