import type { Mark } from './drawing.ts'

/**
 * The hinge side of an elevation in leaf coordinates: a chain-dotted line down the hanging edge run out past foot and top, its
 * letter H, and both sides named in words, so that nothing hangs on a colour or on knowing the convention.
 */
export function hingeSide(leaf: { width: number; height: number }): Mark[] {
  return [
    {
      kind: 'line',
      from: [0, 0],
      to: [0, leaf.height],
      extend: [2.6, 6.8],
      dx: -1.4,
      pen: 'centre',
      part: 'hinge line',
    },
    { kind: 'badge', at: [0, leaf.height], dx: -1.4, dy: 9.7, text: 'H', part: 'hinge line' },
    {
      kind: 'text',
      at: [0, leaf.height],
      dx: -5.4,
      dy: 8.4,
      text: 'hanging side',
      size: 'small',
      anchor: 'end',
      part: 'hinge line',
    },
    {
      kind: 'text',
      at: [leaf.width, leaf.height],
      dx: 0,
      dy: 2,
      text: 'closing side',
      size: 'small',
      anchor: 'end',
      within: leaf.width,
      part: 'closing edge',
    },
  ]
}
