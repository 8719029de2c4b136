import type { Point } from '../../geometry/point.ts'
import type { Ink, Weight } from '../page.ts'

/** The kinds of full-size sheet, in the order in which they are printed. */
export const fullSizeKinds = ['bevels', 'notch', 'top', 'drilling', 'rod'] as const
export type FullSizeKind = (typeof fullSizeKinds)[number]

/** A line at true size, mm, y up. Strokes of 0.5 and more are those that are laid to or cut along. */
export type TemplateLine = {
  kind: 'path'
  points: Point[]
  closed?: true
  width: number
  ink?: Ink
  dash?: number[]
}

/** Words at a place of the template; size in points, angle in degrees anticlockwise. spare: said again beside, so that they may give way to a joint. */
export type TemplateText = {
  kind: 'text'
  at: Point
  text: string
  size: number
  weight?: Weight
  anchor?: 'start' | 'middle' | 'end'
  angle?: 90
  spare?: true
}

export type TemplateMark = TemplateLine | TemplateText

export type Extent = { minX: number; minY: number; maxX: number; maxY: number }

/**
 * One full-size template, mm and y up. lay: what it serves and how it is laid, a sentence each. followed: the line that its sheets follow, so that
 * a sheet it doesn't cross is left out; without it every sheet is printed. keepOff: places across and up that no joint of
 * tiles should come near.
 */
export type Template = {
  title: string
  lay: string[]
  extent: Extent
  marks: TemplateMark[]
  followed?: Point[]
  keepOff?: { x: number[]; y: number[] }
}

/** Strokes of a template, mm. */
export const strokes = { strong: 0.5, clear: 0.3, thin: 0.18 }

export const words = (
  text: string,
  at: Point,
  look: Partial<Pick<TemplateText, 'size' | 'weight' | 'anchor' | 'angle' | 'spare'>> = {},
): TemplateText => ({ kind: 'text', at, text, size: 11, ...look })

export const stroke = (
  points: Point[],
  width: number,
  look: Pick<TemplateLine, 'ink' | 'dash' | 'closed'> = {},
): TemplateLine => ({ kind: 'path', points, width, ...look })

const chordsRound = 72

/** A round as short lines: a hole of 20 mm is true to 0.01. */
export const ring = ([x, y]: Point, radius: number, width: number): TemplateLine =>
  stroke(
    Array.from({ length: chordsRound }, (_, i): Point => {
      const turn = (2 * Math.PI * i) / chordsRound
      return [x + radius * Math.cos(turn), y + radius * Math.sin(turn)]
    }),
    width,
    { closed: true },
  )
