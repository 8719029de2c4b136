import type { Drawing } from '../drawing/drawing.ts'

/** A sheet, mm. Origin at the top left, y down, as a page is read. */
export type PaperFormat = 'a4' | 'letter'
export const paperSizes: Record<PaperFormat, { width: number; height: number }> = {
  a4: { width: 210, height: 297 },
  letter: { width: 215.9, height: 279.4 },
}

export type Ink = 'black' | 'grey' | 'light' | 'accent' | 'warning' | 'white'
export type Weight = 'regular' | 'semibold' | 'bold'

/** size in points (the one place outside the painter where points are spoken of: type sizes are points everywhere in print). */
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
/** A drawing placed in a box at a scale of 1:scale, its margins in paper mm. */
export type PageDrawing = {
  kind: 'drawing'
  x: number
  y: number
  width: number
  height: number
  scale: number
  drawing: Drawing
}
export type PageMark = PageText | PageLine | PageBox | PageDrawing

export type Page = { width: number; height: number; marks: PageMark[] }
export type PaperDocument = { title: string; pages: Page[] }
