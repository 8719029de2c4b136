import type { Fill, Pen } from '../../shared/drawing/drawing.ts'
import type { Ink } from '../../shared/papers/page.ts'

/** Red, green and blue from 0 to 1. */
export type Colour = readonly [number, number, number]

const hex = (code: string): Colour => {
  const part = (at: number) => parseInt(code.slice(at, at + 2), 16) / 255
  return [part(1), part(3), part(5)]
}

/** Inks of print: black does the work, grey stays dark enough for a worn cartridge. */
export const inks: Record<Ink, Colour> = {
  black: hex('#000000'),
  grey: hex('#4a4a4a'),
  light: hex('#e3e0da'),
  accent: hex('#1f4e79'),
  warning: hex('#8a2b12'),
  white: hex('#ffffff'),
}

/** Tints of the timber in print: pale, so that lines and figures over them stay clear when copied. */
export const fills: Record<Exclude<Fill, 'none'>, Colour> = {
  board: hex('#ffffff'),
  ledge: hex('#f3ead9'),
  brace: hex('#e8d9bd'),
  cut: hex('#ffffff'),
  metal: hex('#d9d9d9'),
  paper: hex('#ffffff'),
  ink: hex('#000000'),
  accent: hex('#000000'),
}

/** Every pen prints black but the grain, which is only suggested. */
export const penInk = (pen: Pen): Colour => (pen === 'grain' ? hex('#6b6b6b') : inks.black)
