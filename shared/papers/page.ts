import type { Drawing } from '../drawing/drawing.ts'
import type { Point } from '../geometry/point.ts'

/** A sheet, mm. Origin at the top left, y down, as a page is read. */
export type PaperFormat = 'a4' | 'letter'
export const paperSizes: Record<PaperFormat, { width: number; height: number }> = {
  a4: { width: 210, height: 297 },
  letter: { width: 215.9, height: 279.4 },
}

export type Ink = 'black' | 'grey' | 'light' | 'accent' | 'warning' | 'white'
export type Weight = 'regular' | 'semibold'

/** size in points (the one place outside the painter where points are spoken of: type sizes are points everywhere in print). y is the baseline. */
export type PageText = {
  kind: 'text'
  x: number
  y: number
  text: string
  size: number
  weight: Weight
  ink: Ink
  anchor: 'start' | 'middle' | 'end'
  angle?: number
}
export type PageLine = {
  kind: 'line'
  x1: number
  y1: number
  x2: number
  y2: number
  width: number
  ink: Ink
  dash?: number[]
}
export type PageBox = {
  kind: 'box'
  x: number
  y: number
  width: number
  height: number
  stroke?: { width: number; ink: Ink }
  fill?: Ink
}
/** A line through several places, or round an outline when closed; width and dash in mm. */
export type PagePath = {
  kind: 'path'
  points: Point[]
  closed: boolean
  width: number
  ink: Ink
  dash?: number[]
}
/** A drawing placed in a box at a scale of 1:scale, its margins in paper mm. unscaled: its scale isn't written over it. */
export type PageDrawing = {
  kind: 'drawing'
  x: number
  y: number
  width: number
  height: number
  scale: number
  drawing: Drawing
  unscaled?: true
}
/** A picture (a workshop's logo) in a box, mm, stretched to fill it: base64 is its file's bytes. */
export type PagePicture = {
  kind: 'picture'
  x: number
  y: number
  width: number
  height: number
  format: 'png' | 'jpeg'
  base64: string
}
export type PageMark = PageText | PageLine | PagePath | PageBox | PageDrawing | PagePicture

export type Page = { width: number; height: number; marks: PageMark[] }

/** A paper ready to be painted. issuedAt (ISO) dates its bytes; null on a draft, which carries no date. language: the tag of its words where they aren't British. */
export type PaperDocument = { title: string; issuedAt: string | null; pages: Page[]; language?: string }

/** Margins that every printer on the bench can print within, mm: wider at the foot, where rollers let go of the sheet. */
export const margins = { left: 12, right: 12, top: 11, bottom: 16.5 }

/**
 * Width of a line of words in mm; size in points. The painter's side gives one that reads the real fonts. said turns words into those of the chosen
 * language before they are broken into lines; left out for British English.
 */
export type Measure = ((text: string, size: number, weight: Weight) => number) & {
  said?: (text: string) => string
}

export const mmOfPoint = 25.4 / 72
