import { describe, expect, it } from 'vitest'
import type { Ledge } from '../../shared/gate/leaf.ts'
import type { GateSpec } from '../../shared/gate/spec.ts'
import { lengthTolerance, type Point } from '../../shared/geometry/point.ts'
import { atLeast, depthIn, edges, everyGate, near, shoelace } from '../fixtures/holds.ts'
import { sampleSize } from '../fixtures/sample.ts'

const numRuns = sampleSize('Braces and fixings', { usual: 1200, long: 50_000 })

describe('braces of a made gate', () => {
  it('touch both ledge edges, keep between their setbacks, and have the angle and area they state', () => {
    everyGate(numRuns, (_made, { ledges, braces }, spec) => {
      braces.forEach((brace, i) => {
        const [lower, upper] = [ledges[i] as Ledge, ledges[i + 1] as Ledge]
        const [foot, footEnd, headEnd, head] = brace.outline as [Point, Point, Point, Point]
        const width = brace.section.width
        const radians = (brace.angle * Math.PI) / 180
        near(foot[1], edges(lower)[1], 'foot on the lower ledge')
        near(footEnd[1], edges(lower)[1], 'foot on the lower ledge')
        near(head[1], edges(upper)[0], 'head on the upper ledge')
        near(headEnd[1], edges(upper)[0], 'head on the upper ledge')
        if (!(head[0] > foot[0] && brace.angle < 90)) throw new Error('leans to the hanging side')
        near(Math.atan2(head[1] - foot[1], head[0] - foot[0]), radians, 'angle', 1e-9)
        near(brace.sawSetting, 90 - brace.angle, 'saw setting')
        near(Math.hypot(head[0] - foot[0], head[1] - foot[1]), brace.edgeLength, 'edge length')
        near(footEnd[0] - foot[0], brace.contact, 'contact')
        near(brace.contact, width / Math.sin(radians), 'contact along the ledge')
        near(shoelace(brace.outline), width * brace.edgeLength, 'area', 1e-4)
        // Long point to long point: how far the outline reaches along the brace.
        const along = brace.outline.map(([x, y]) => x * Math.cos(radians) + y * Math.sin(radians))
        near(brace.length, Math.max(...along) - Math.min(...along), 'long point to long point')
        const { end } = spec.ledges
        const splay = end.cut === 'splayed' ? lower.section.width * Math.tan((end.angle * Math.PI) / 180) : 0
        const { footSetback, headSetback, run } = spec.braces as NonNullable<GateSpec['braces']>
        const reach = [lower.x + splay + footSetback, lower.x + lower.length - headSetback] as const
        atLeast(foot[0], reach[0], 'foot setback')
        atLeast(reach[1], headEnd[0], 'head setback')
        if (run === 'each-bay' || i === 0) near(foot[0], reach[0], 'foot at its setback')
        if (run === 'each-bay' || i === braces.length - 1) near(headEnd[0], reach[1], 'head at its setback')
      })
      const [first, second] = braces
      if (spec.braces?.run === 'in-line' && first && second) {
        near(first.angle, second.angle, 'one slope', 1e-9)
        const [a, b] = [first.outline[0] as Point, second.outline[3] as Point]
        near(
          Math.atan2(b[1] - a[1], b[0] - a[0]),
          (first.angle * Math.PI) / 180,
          'one line from foot to head',
          1e-9,
        )
      }
    })
  })
})

describe('fixings of a made gate', () => {
  it('stand in their board and their ledge with 15, 20 and three diameters kept, two four diameters apart or one alone', () => {
    everyGate(numRuns, (_made, { boards, ledges, fixings, width }, spec) => {
      const d = spec.fixings.diameter
      for (const ledge of ledges)
        boards.forEach((board, index) => {
          const own = fixings.filter((f) => f.board === index && f.member === `${ledge.name} ledge`)
          const lost = (ledge.length - ledge.shortLength) / 2
          const reach = [ledge.x + lost, ledge.x + ledge.length - lost] as const
          const from = Math.max(board.x, reach[0])
          const to = Math.min(board.x + board.width, reach[1])
          atLeast(to - from, 25, 'overlap')
          const keptFrom = index === 0 ? Math.max(15, reach[0] + 15) : Math.max(board.x + 20, reach[0] + 15)
          const keptTo =
            index === boards.length - 1
              ? Math.min(width - 15, reach[1] - 15)
              : Math.min(board.x + board.width - 20, reach[1] - 15)
          const two = keptTo - keptFrom >= 4 * d - lengthTolerance
          expect(own).toHaveLength(two ? 2 : 1)
          if (!two) {
            near(own[0]?.x ?? -1, (from + to) / 2, 'one in the middle')
            near(own[0]?.y ?? -1, ledge.y, 'one on the centre line')
            return
          }
          const [a, b] = own as [(typeof own)[number], (typeof own)[number]]
          near(a.x, keptFrom, 'first')
          near(b.x, keptTo, 'second')
          atLeast(b.x - a.x, 4 * d, 'four diameters apart')
          const half = ledge.section.width / 2
          if (half < 3 * d) return
          for (const { y } of own)
            atLeast(half - Math.abs(y - ledge.y), 3 * d, 'three diameters from the edges')
          if (half > 3 * d + lengthTolerance) expect(Math.sign(a.y - ledge.y)).toBe(-Math.sign(b.y - ledge.y))
        })
    })
  })

  it('stand in their board 20 in and their brace max(15, three diameters) in', () => {
    let onBraces = 0
    everyGate(numRuns, (made, { boards, braces, fixings }, spec) => {
      const d = spec.fixings.diameter
      const margin = Math.max(15, 3 * d)
      for (const brace of braces)
        boards.forEach((board, index) => {
          const own = fixings.filter((f) => f.board === index && f.member === `${brace.name} brace`)
          if (own.length > 2) throw new Error(`${own.length} fixings of one board on one brace`)
          onBraces += own.length
          for (const { x, y, joins } of own) {
            expect(joins).toBe('brace')
            atLeast(x - board.x, 20, 'from the hanging-side joint')
            atLeast(board.x + board.width - x, 20, 'from the closing-side joint')
            atLeast(depthIn(brace.outline, [x, y]), margin, 'from the brace edge')
          }
          const [a, b] = own
          if (!a || !b) return
          const radians = (brace.angle * Math.PI) / 180
          atLeast(
            (b.x - a.x) * Math.cos(radians) + (b.y - a.y) * Math.sin(radians),
            4 * d,
            'four diameters apart',
          )
        })
      const counted = made.holes.reduce((sum, hole) => sum + hole.quantity, 0)
      expect(counted).toBe(fixings.length)
    })
    expect(onBraces).toBeGreaterThan(numRuns)
  })

  it('leave a board without one on the braces only where it is said', () => {
    everyGate(numRuns, (made, { boards, braces, fixings }) => {
      if (braces.length === 0) return
      const loose = boards
        .map((_, index) => index)
        .filter((index) => !fixings.some((f) => f.joins === 'brace' && f.board === index))
      const said = made.checks.find((check) => check.id === 'board-not-on-brace')?.message ?? ''
      const numbers = (said.match(/\d+/g) ?? []).map((number) => Number(number) - 1)
      expect(numbers).toEqual(loose)
    })
  })
})
