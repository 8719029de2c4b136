import fc from 'fast-check'
import polygonClipping, { type MultiPolygon, type Ring } from 'polygon-clipping'
import { describe, expect, it } from 'vitest'
import { design } from '../../shared/gate/design.ts'
import { braceRoom, braceToFix } from '../../shared/gate/fixingPlaces.ts'
import type { Board, Leaf, Ledge } from '../../shared/gate/leaf.ts'
import type { GateSpec } from '../../shared/gate/spec.ts'
import type { Point } from '../../shared/geometry/point.ts'
import { clipToStrip, inset, signedArea } from '../../shared/geometry/polygon.ts'
import { randomGate } from '../fixtures/randomGates.ts'
import { sampleSize, seed } from '../fixtures/sample.ts'

/**
 * The outlines are laid into polygon-clipping, a sweep-line library that shares nothing with ours, and its areas and overlaps
 * are held against what the design says. Made gates are counted, not tried ones.
 */
const wanted = sampleSize('Outlines against polygon-clipping, made', { usual: 500, long: 5000 })

const ring = (points: readonly Point[]): Ring => points.map(([x, y]) => [x, y])
const box = (left: number, right: number, low: number, high: number): Ring => [
  [left, low],
  [right, low],
  [right, high],
  [left, high],
]
const boardBox = (board: Board, height: number): Ring => box(board.x, board.x + board.width, 0, height)

/** A ledge seen on the back: a rectangle, or with splayed ends a trapezium with its long edge below. */
function ledgeRing(ledge: Ledge, spec: GateSpec): Ring {
  const [low, high] = [ledge.y - ledge.section.width / 2, ledge.y + ledge.section.width / 2]
  const [left, right] = [ledge.x, ledge.x + ledge.length]
  const off = spec.ledges.end.cut === 'splayed' ? (ledge.length - ledge.shortLength) / 2 : 0
  return [
    [left, low],
    [right, low],
    [right - off, high],
    [left + off, high],
  ]
}

const ringArea = (points: Ring): number =>
  points.reduce((sum, [x, y], i) => {
    const [nx, ny] = points[(i + 1) % points.length] as [number, number]
    return sum + (x * ny - nx * y) / 2
  }, 0)

/** Area by the library: outer rings less their holes, whichever way they run. */
const areaOf = (shape: MultiPolygon): number =>
  shape.reduce(
    (sum, [outer = [], ...holes]) =>
      sum + Math.abs(ringArea(outer)) - holes.reduce((lost, hole) => lost + Math.abs(ringArea(hole)), 0),
    0,
  )

const union = (rings: Ring[]): number => {
  const [first, ...others] = rings.map((one) => [one])
  return first ? areaOf(polygonClipping.union(first, ...others)) : 0
}
const overlap = (a: Ring, b: Ring): number => areaOf(polygonClipping.intersection([a], [b]))

/** Half a square millimetre over metres of outline: what rounding may leave between edges that touch. */
const touching = 0.5
const share = 1e-6

const madeGates = (): { spec: GateSpec; leaf: Leaf }[] => {
  const made: { spec: GateSpec; leaf: Leaf }[] = []
  for (const spec of fc.sample(randomGate, { seed, numRuns: wanted * 3 })) {
    const outcome = design(spec)
    const leaf = outcome.made ? outcome.design.leaves[0] : undefined
    if (leaf && made.length < wanted) made.push({ spec, leaf })
  }
  return made
}

const gates = madeGates()

describe('an independent geometry library', () => {
  it('was given as many made gates as were asked for', () => {
    expect(gates).toHaveLength(wanted)
    expect(gates.filter(({ leaf }) => leaf.braces.length > 0).length).toBeGreaterThan(wanted / 3)
  })

  it('finds boards apart from one another that fill the leaf but for their joints', () => {
    for (const { spec, leaf } of gates) {
      const boxes = leaf.boards.map((board) => boardBox(board, leaf.height))
      const joints = (leaf.boards.length - 1) * (spec.boards.gap as number)
      const alone = boxes.reduce((sum, one) => sum + Math.abs(ringArea(one)), 0)
      const together = union(boxes)
      expect(Math.abs(alone - together)).toBeLessThan(touching)
      expect(Math.abs(together - (leaf.width - joints) * leaf.height)).toBeLessThan(touching)
    }
  })

  it('finds ledges within the leaf and apart from one another', () => {
    for (const { spec, leaf } of gates) {
      const whole = box(0, leaf.width, 0, leaf.height)
      const rings = leaf.ledges.map((ledge) => ledgeRing(ledge, spec))
      const alone = rings.reduce((sum, one) => sum + ringArea(one), 0)
      expect(Math.abs(union(rings) - alone)).toBeLessThan(touching)
      for (const one of rings) expect(Math.abs(overlap(one, whole) - ringArea(one))).toBeLessThan(touching)
    }
  })

  it('finds every brace as big as width × edge length, within the leaf, and clear of every ledge and brace', () => {
    for (const { spec, leaf } of gates) {
      const whole = box(0, leaf.width, 0, leaf.height)
      const rings = leaf.braces.map((brace) => ring(brace.outline))
      leaf.braces.forEach((brace, i) => {
        const own = rings[i] as Ring
        const stated = brace.section.width * brace.edgeLength
        expect(Math.abs(union([own]) - stated)).toBeLessThan(stated * share)
        expect(Math.abs(overlap(own, whole) - stated)).toBeLessThan(touching)
        for (const ledge of leaf.ledges) expect(overlap(own, ledgeRing(ledge, spec))).toBeLessThan(touching)
        rings.slice(i + 1).forEach((other) => expect(overlap(own, other)).toBeLessThan(touching))
      })
    }
  })

  it('cuts a brace by a board’s strip as our own clipping does', () => {
    for (const { leaf } of gates)
      for (const brace of leaf.braces)
        for (const board of leaf.boards) {
          const ours = clipToStrip(brace.outline, board.x, board.x + board.width)
          const theirs = overlap(ring(brace.outline), boardBox(board, leaf.height))
          expect(Math.abs((ours.length < 3 ? 0 : signedArea(ours)) - theirs)).toBeLessThan(touching)
        }
  })

  it('leaves the same room for fixings where a board’s strip and a brace are drawn in', () => {
    for (const { spec, leaf } of gates) {
      const margin = Math.max(15, 3 * spec.fixings.diameter)
      for (const brace of leaf.braces) {
        const drawnIn = inset(brace.outline, margin)
        for (const board of leaf.boards) {
          const room = braceRoom(board, braceToFix(brace, spec.fixings.diameter))
          const [left, right] = [board.x + 20, board.x + board.width - 20]
          const theirs =
            right <= left || drawnIn.length < 3 ? 0 : overlap(ring(drawnIn), box(left, right, 0, leaf.height))
          expect(Math.abs((room.length < 3 ? 0 : signedArea(room)) - theirs)).toBeLessThan(touching)
        }
      }
    }
  })
})
