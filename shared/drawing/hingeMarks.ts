import type { Mark } from './drawing.ts'

/** From where to where the hinge line runs in the model, how far past both on paper, and how high its letter stands over it. */
type HingeLine = { low: number; high: number; past: [number, number]; letter: number }

/** The chain-dotted line of the hinges at x = 0, its letter H and its name in words. */
export const hingeMarks = ({ low, high, past, letter }: HingeLine): Mark[] => [
  { kind: 'line', from: [0, low], to: [0, high], extend: past, dx: -1.4, pen: 'centre', part: 'hinge line' },
  { kind: 'badge', at: [0, high], dx: -1.4, dy: letter, text: 'H', part: 'hinge line' },
  {
    kind: 'text',
    at: [0, high],
    dx: -5.4,
    dy: letter - 1.3,
    text: 'hanging side',
    size: 'small',
    anchor: 'end',
    part: 'hinge line',
  },
]
