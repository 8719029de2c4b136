import type { Pen, TextSize } from './drawing.ts'

/**
 * Width and dash of each pen on paper, mm, after ISO 128: two widths in the ratio 2 : 1 with a middle one for the object's own lesser edges.
 * Nothing is under 0.18, so that a photocopier keeps it.
 */
export const pens: Record<Pen, { width: number; dash: number[] }> = {
  visible: { width: 0.5, dash: [] },
  outline: { width: 0.35, dash: [] },
  hidden: { width: 0.25, dash: [2, 1] },
  centre: { width: 0.25, dash: [5, 1.2, 0.8, 1.2] },
  narrow: { width: 0.22, dash: [] },
  dimension: { width: 0.2, dash: [] },
  tick: { width: 0.4, dash: [] },
  hatch: { width: 0.2, dash: [] },
  grain: { width: 0.18, dash: [9, 1.8, 3.5, 1.8] },
  thrust: { width: 0.4, dash: [] },
}

/** Type sizes in mm on paper: 8.5, 11, 11.5, 13 and 13 points. small is for names only: a figure is never under 11 points. */
export const textSizes: Record<TextSize, number> = {
  small: 3,
  figure: 3.89,
  normal: 4.06,
  large: 4.6,
  title: 4.6,
}

/** Height of a capital or a figure as a share of the type size, IBM Plex Sans. */
export const capHeight = 0.698
