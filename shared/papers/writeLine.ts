import type { Block } from './flow.ts'

/** A place to write: words under a line, and its share of the width. */
export type WriteField = { label: string; share: number }

/** Space between two places to write, mm. */
const between = 6

/** Places to write side by side, each a line with what belongs on it under it; room over the line for a hand. */
export function writeLine(fields: readonly WriteField[], width: number): Block {
  return {
    height: 17,
    above: 1,
    marks: (x, y) => {
      let at = x
      return fields.flatMap(({ label, share }) => {
        const own = (width + between) * share - between
        const from = at
        at += own + between
        return [
          {
            kind: 'line' as const,
            x1: from,
            y1: y + 11,
            x2: from + own,
            y2: y + 11,
            width: 0.35,
            ink: 'black' as const,
          },
          {
            kind: 'text' as const,
            ...{ x: from, y: y + 15.4, text: label, size: 11 },
            ...{ weight: 'regular' as const, ink: 'grey' as const, anchor: 'start' as const },
          },
        ]
      })
    },
  }
}
