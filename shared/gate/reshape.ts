import { standardClimate } from '../timber/standardClimate.ts'
import { fromOpening } from './opening.ts'
import { specOf } from './parseSpec.ts'
import type { DraftSpec, GateSpec, Section } from './spec.ts'
import { standardDraft } from './standardSpec.ts'

/** One change of a list that only makes sense whole: path as the job takes it, null takes an optional entry out; typed '' lets go of words kept there. */
export type Reshaping = { path: string; value: unknown; typed?: string }

type Size = DraftSpec['size']
type Opening = Extract<Size, { from: 'opening' }>
type Construction = GateSpec['construction']
type Frame = NonNullable<GateSpec['frame']>

/** Gap between the leaves of a pair that a new pair starts from, and between the halves of a stable door, mm: common practice. */
export const standardMeetingGap = 6

/** What an opening is asked with before its own gaps are given, mm: common practice for a side gate between posts. */
export const standardGaps = { hangingGap: 6, closingGap: 10, groundGap: 50 }

/** Rise of a raked or curved top to start from, mm: common practice. */
const standardRise = 100

const set = (path: string, value: unknown): Reshaping => ({ path: `spec.${path}`, value })

const pairGap = (size: Size): { meetingGap?: number } =>
  size.meetingGap === undefined ? {} : { meetingGap: size.meetingGap }

/** The leaf that a whole survey comes to, to a tenth of a mm; nothing while a size of it is missing. */
function leafOf(draft: DraftSpec): { width: number | null; height: number | null } {
  const spec = specOf(draft)
  if (spec?.size.from !== 'opening') return { width: null, height: null }
  const { width, height } = fromOpening(spec, spec.size).value
  const tenth = (mm: number) => (mm > 0 ? Math.round(mm * 10) / 10 : null)
  return { width: tenth(width), height: tenth(height) }
}

const openingToMeasure = (size: Size): Opening => ({
  from: 'opening',
  widths: [null, null, null],
  heights: [null, null],
  ...standardGaps,
  ...pairGap(size),
})

/** Sizes from the leaf or from a surveyed opening. A whole survey leaves its leaf behind; a survey's extras go with it. */
export function sizeFrom(draft: DraftSpec, from: Size['from']): Reshaping[] {
  if (draft.size.from === from) return []
  if (from === 'opening') return [set('size', openingToMeasure(draft.size))]
  return [
    set('size', { from: 'leaf', ...leafOf(draft), ...pairGap(draft.size) }),
    { ...set('survey', null), typed: '' },
  ]
}

/** How the opening is filled: one leaf, a pair side by side, or a stable door's two halves one above the other. */
export type Hanging = 'one' | 'pair' | 'stable'

/** How a draft fills its opening. */
export function hangingOf({ leaves, stable }: Pick<DraftSpec, 'leaves' | 'stable'>): Hanging {
  if (leaves === 2) return 'pair'
  return stable ? 'stable' : 'one'
}

/** The height of the whole that a lower half is taken from: the leaf's, or the lower of the opening's. */
function wholeHeight({ size }: DraftSpec): number | null {
  if (size.from === 'leaf') return size.height
  const heights = size.heights.filter((mm) => mm !== null)
  return heights.length > 0 ? Math.min(...heights) : null
}

/** A lower half a little over half the door, to a whole 10 mm; 1100 where the height is still to come. */
const lowerHalf = (draft: DraftSpec): number => Math.round(((wholeHeight(draft) ?? 2000) * 0.55) / 10) * 10

/** Heights that the joiner set belong to one way of building: another starts from the usual places. */
const usualHeights = (draft: DraftSpec): Reshaping[] =>
  draft.ledges.heights === 'auto' ? [] : [set('ledges.heights', 'auto')]

/** One leaf, a pair with its meeting gap and edge, or a stable door with its lower height and gap. */
export function hang(draft: DraftSpec, to: Hanging): Reshaping[] {
  if (hangingOf(draft) === to) return []
  const pair = to === 'pair'
  const stable = to === 'stable' ? { lowerHeight: lowerHalf(draft), gap: standardMeetingGap } : null
  return [
    set('leaves', pair ? 2 : 1),
    set('size.meetingGap', pair ? standardMeetingGap : null),
    set('meeting', pair ? { edge: 'square' } : null),
    set('stable', stable),
    ...(to === 'one' ? [] : usualHeights(draft)),
  ]
}

/** A meeting edge: a rebate or a cover strip laps, a square edge doesn't. */
export function meet(draft: DraftSpec, edge: 'square' | 'rebated' | 'strip'): Reshaping[] {
  const laps = { square: null, rebated: 12, strip: 20 }
  const lap = draft.meeting?.edge === edge ? (draft.meeting.lap ?? laps[edge]) : laps[edge]
  return [set('meeting', lap === null ? { edge } : { edge, lap })]
}

const member = (draft: DraftSpec, name: string, width: number): Section => ({
  name,
  species: draft.ledges.section.species,
  thickness: draft.boards.section.thickness + draft.ledges.section.thickness,
  width,
})

/**
 * A frame to start from: as thick as boards and ledges together, so that the face is flush and the back too. Widths, tenon and rebate are
 * common practice.
 */
export const standardFrame = (draft: DraftSpec): Frame => ({
  stile: member(draft, 'ex 50 × 100', 95),
  topRail: member(draft, 'ex 50 × 125', 120),
  tenon: 60,
  horn: 40,
  rebate: 12,
})

/** Into a frame ledges go square and from stile to stile; out of it they get their usual ends and insets again. */
function frameChanges(draft: DraftSpec, framed: boolean): Reshaping[] {
  if (framed === (draft.frame !== undefined)) return []
  const { hangingInset, closingInset, end } = standardDraft().ledges
  return [
    set('frame', framed ? standardFrame(draft) : null),
    set('ledges.hangingInset', framed ? 0 : hangingInset),
    set('ledges.closingInset', framed ? 0 : closingInset),
    set('ledges.end', framed ? { cut: 'square' } : end),
    ...usualHeights(draft),
  ]
}

/** The kind of gate with all that belongs to it. brace: the workshop's own section for a brace, where it keeps one. */
export function build(draft: DraftSpec, to: Construction, brace?: Section): Reshaping[] {
  if (draft.construction === to) return []
  const standard = standardDraft().braces
  const braces = standard && brace ? { ...standard, section: brace } : standard
  const braced = to !== 'ledged'
  return [
    set('construction', to),
    ...(braced === (draft.braces !== undefined) ? [] : [set('braces', braced ? braces : null)]),
    ...frameChanges(draft, to === 'framed-ledged-braced'),
  ]
}

/** A top of another shape keeps its rise, and a rake its high side. */
export function topOf(draft: DraftSpec, shape: GateSpec['top']['shape']): Reshaping[] {
  const { top } = draft
  if (top.shape === shape) return []
  const rise = top.shape === 'level' ? standardRise : top.rise
  if (shape === 'level') return [set('top', { shape })]
  return [set('top', shape === 'raked' ? { shape, rise, high: 'hanging' } : { shape, rise })]
}

/** Brace ends: a notch starts 12 mm deep, common practice in a ledge of 145. */
export const braceEnds = (ends: 'flush' | 'notched'): Reshaping[] => [
  set('braces.ends', ends),
  set('braces.notchDepth', ends === 'notched' ? 12 : null),
]

/** The joint gap as a length, or left to the climate, which is then asked for. */
export function boardGap(draft: DraftSpec, from: 'length' | 'climate'): Reshaping[] {
  if (from === 'length') return draft.boards.gap === 'auto' ? [set('boards.gap', 2)] : []
  return [set('boards.gap', 'auto'), ...(draft.climate ? [] : [set('climate', standardClimate)])]
}

/** The air of the place: a typical year to start from, or none, when no gap can be left to it. */
export function weather(draft: DraftSpec, known: boolean): Reshaping[] {
  if (known) return draft.climate ? [] : [set('climate', standardClimate)]
  return [set('climate', null), ...boardGap(draft, 'length')]
}
