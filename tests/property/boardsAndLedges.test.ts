import { describe, expect, it } from 'vitest'
import type { Ledge } from '../../shared/gate/leaf.ts'
import { lengthTolerance } from '../../shared/geometry/point.ts'
import { atLeast, edges, everyGate, near } from '../fixtures/holds.ts'
import { sampleSize } from '../fixtures/sample.ts'

const numRuns = sampleSize('Boards and ledges', { usual: 1200, long: 50_000 })

describe('boards of a made gate', () => {
  it('add up to the leaf with their gaps, each starting one gap after the one before', () => {
    everyGate(numRuns, (_made, { boards, width, height }, spec) => {
      const gap = spec.boards.gap as number
      near(
        boards.reduce((sum, board) => sum + board.width, 0) + (boards.length - 1) * gap,
        width,
        'boards and gaps',
      )
      boards.forEach((board, i) => {
        const before = boards[i - 1]
        near(board.x, before ? before.x + before.width + gap : 0, `start of board ${i + 1}`)
        near(board.length, height, `length of board ${i + 1}`)
        near(board.blank, height + 2 * spec.boards.endTrim, `blank of board ${i + 1}`)
      })
    })
  })

  it('are as few as a count by brute force allows, ripped where the person asked', () => {
    everyGate(numRuns, (_made, { boards, width }, spec) => {
      const { section, rip, tongues } = spec.boards
      const gap = spec.boards.gap as number
      const c = section.width
      const q = section.groove ?? (section.tongue ? section.tongue + 1 : 0)
      const grooveAtHanging = tongues === 'to-closing'
      const most = { hanging: grooveAtHanging ? c - q : c, closing: grooveAtHanging ? c : c - q }
      const widths = boards.map((board) => board.width)
      if (width <= c - q + lengthTolerance) {
        near(widths[0] ?? 0, width, 'the one board')
        expect(widths).toHaveLength(1)
        return
      }
      /** What n boards leave for the ripped one: the leaf less gaps, full boards and the other edge board. */
      const ripped = (n: number): number => {
        const room = width - (n - 1) * gap - (n - 2) * c
        return rip === 'both' ? room / 2 : room - (rip === 'hanging' ? most.closing : most.hanging)
      }
      const limit = rip === 'both' ? c - q : most[rip]
      const counts = Array.from({ length: 200 }, (_, i) => i + 2)
      const n = counts.find((count) => ripped(count) <= limit + lengthTolerance) ?? 0
      expect(widths).toHaveLength(n)
      const [first, last] = [widths[0] as number, widths.at(-1) as number]
      near(first, rip === 'closing' ? most.hanging : ripped(n), 'first board')
      near(last, rip === 'hanging' ? most.closing : ripped(n), 'last board')
      widths.slice(1, -1).forEach((inner) => near(inner, c, 'inner board'))
    })
  })

  it('have a fence of face and kept tongue when an edge is cut, and none otherwise', () => {
    everyGate(numRuns, (_made, { boards }, spec) => {
      const { tongue = 0, groove } = spec.boards.section
      const hasGroove = (groove ?? tongue) > 0
      boards.forEach((board, i) => {
        const tongueEdge = spec.boards.tongues === 'to-closing' ? i === boards.length - 1 : i === 0
        const grooveEdge = spec.boards.tongues === 'to-closing' ? i === 0 : i === boards.length - 1
        const full = boards.length === 1 ? 0 : spec.boards.section.width
        const cut =
          (tongueEdge && tongue > 0) ||
          (grooveEdge && hasGroove) ||
          board.width < full - lengthTolerance ||
          (boards.length === 1 && board.width < spec.boards.section.width - lengthTolerance)
        if (!cut) expect(board.fence).toBeNull()
        else near(board.fence ?? -1, board.width + (tongueEdge ? 0 : tongue), `fence of board ${i + 1}`)
      })
    })
  })
})

describe('ledges of a made gate', () => {
  it('lie on the leaf, one clear of the next, with the short edge their ends leave', () => {
    everyGate(numRuns, (_made, { ledges, width, height }, spec) => {
      const { end, hangingInset, closingInset } = spec.ledges
      ledges.forEach((ledge, i) => {
        const [low, high] = edges(ledge)
        atLeast(low, 0, 'lower edge')
        atLeast(height, high, 'upper edge')
        const before = ledges[i - 1]
        if (before) atLeast(low, edges(before)[1], 'clear of the ledge below')
        near(ledge.length, width - hangingInset - closingInset, 'length')
        const { thickness, width: across } = ledge.section
        const lost =
          end.cut === 'square'
            ? 0
            : 2 * (end.cut === 'bevelled' ? thickness : across) * Math.tan((end.angle * Math.PI) / 180)
        near(ledge.shortLength, ledge.length - lost, 'short length')
      })
      if (spec.ledges.heights !== 'auto')
        ledges.forEach((ledge, i) => near(ledge.y, spec.ledges.heights[i] as number, 'height as entered'))
      else {
        near(edges(ledges[0] as Ledge)[0], 125, 'bottom ledge from the foot')
        near(edges(ledges.at(-1) as Ledge)[1], height - 125, 'top ledge from the top')
      }
    })
  })
})
