import fc from 'fast-check'
import { describe, it } from 'vitest'
import { gateDrawings } from '../../shared/drawing/gateDrawings.ts'
import { design } from '../../shared/gate/design.ts'
import type { Point } from '../../shared/geometry/point.ts'
import { lengthTolerance } from '../../shared/geometry/point.ts'
import type { Drawing } from '../../shared/drawing/drawing.ts'
import { randomGate } from '../fixtures/randomGates.ts'
import { sampleSize, seed } from '../fixtures/sample.ts'

const numRuns = sampleSize('Drawings of either hand', { usual: 800, long: 20_000 })

/** The pieces' outlines by the part they belong to, each as its corners in order along x and y. */
const outlines = (drawing: Drawing): [string, Point[]][] =>
  drawing.marks.flatMap((mark): [string, Point[]][] =>
    mark.kind === 'polygon' && mark.part !== undefined ? [[mark.part, mark.points]] : [],
  )

const sorted = (points: readonly Point[]): Point[] => [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1])

describe('drawings of a left-hung and a right-hung gate', () => {
  it('are mirror images in every part of all three views', () => {
    fc.assert(
      fc.property(randomGate, (spec) => {
        const outcome = design(spec)
        if (!outcome.made) return
        const width = outcome.design.leaves[0]?.width ?? 0
        const draw = (hung: 'left' | 'right') => gateDrawings({ ...spec, hung }, outcome.design, 'mm')
        const [left, right] = [draw('left'), draw('right')]
        for (const view of ['back', 'face', 'section'] as const) {
          const [one, other] = [outlines(left[view]), outlines(right[view])]
          if (one.length !== other.length || (view !== 'section' && one.length === 0))
            throw new Error(`${view}: ${one.length} parts and ${other.length}`)
          one.forEach(([part, points], i) => {
            const [otherPart, otherPoints] = other[i] as [string, Point[]]
            if (part !== otherPart) throw new Error(`${view}: ${part} against ${otherPart}`)
            const mirrored = sorted(points.map(([x, y]): Point => [width - x, y]))
            sorted(otherPoints).forEach(([x, y], corner) => {
              const [mx, my] = mirrored[corner] as Point
              if (Math.abs(x - mx) > lengthTolerance || Math.abs(y - my) > lengthTolerance)
                throw new Error(`${view}: ${part} is at ${x}, ${y} and not at ${mx}, ${my}`)
            })
          })
        }
      }),
      { seed, numRuns },
    )
  })
})
