import { describe, expect, it } from 'vitest'
import { braceFigures, braceSlope } from '../../shared/gate/braceAngle.ts'
import { gateDrawings } from '../../shared/drawing/gateDrawings.ts'
import type { Point } from '../../shared/geometry/point.ts'
import { toDegrees, type Radians } from '../../shared/units/angle.ts'
import { checksOf, designOf, gate, gateWith, leafOf } from '../fixtures/gates.ts'

// Solved from H·cos θ + b = R·sin θ by bisection to ten places, apart from the program.
const worked = [
  {
    clearHeight: 1310,
    run: 802,
    width: 120,
    angle: 63.00525,
    saw: 26.99475,
    edge: 1470.1787,
    length: 1531.3079,
  },
  {
    clearHeight: 905,
    run: 707,
    width: 95,
    angle: 56.74755,
    saw: 33.25245,
    edge: 1082.1958,
    length: 1144.4863,
  },
  {
    clearHeight: 1180,
    run: 640,
    width: 145,
    angle: 67.72679,
    saw: 22.27321,
    edge: 1275.1421,
    length: 1334.5318,
  },
]

describe('a brace', () => {
  it.each(worked)(
    '$width wide in a bay $clearHeight high over a run of $run stands at $angle°',
    ({ clearHeight, run, width, angle, saw, edge, length }) => {
      const slope = braceSlope({ clearHeight, run, width }) as Radians
      const figures = braceFigures(slope, clearHeight, width)
      expect(toDegrees(slope)).toBeCloseTo(angle, 5)
      expect(figures.sawSetting).toBeCloseTo(saw, 5)
      expect(figures.edgeLength).toBeCloseTo(edge, 4)
      expect(figures.length).toBeCloseTo(length, 4)
    },
  )

  it.each(worked)(
    '$width wide comes out the same in a whole gate with that bay',
    ({ clearHeight, run, width, angle, edge, length }) => {
      // Two ledges of 145, 125 in from foot and top: the leaf is 540 higher than its bay. Ledges are 950 − 10 − 14 = 926.
      const setbacks = { footSetback: 50, headSetback: 926 - 50 - run }
      const [brace] = leafOf(
        gateWith({
          size: { height: clearHeight + 540 },
          braces: { ...setbacks, section: { name: 'b', species: 'redwood', thickness: 28, width } },
        }),
      ).braces
      expect(brace?.angle).toBeCloseTo(angle, 5)
      expect(brace?.edgeLength).toBeCloseTo(edge, 4)
      expect(brace?.length).toBeCloseTo(length, 4)
      expect(brace?.outline[0]).toEqual([60, 270])
      expect(brace?.outline[2]?.[0]).toBeCloseTo(60 + run, 9)
    },
  )

  it('of a 3-4-5 slope has the corners worked by hand', () => {
    // 800 × 0.6 + 96 = 0.8 × 720, so sin θ = 0.8; contact 96 / 0.8 = 120; the head lies 800 × 0.75 = 600 further on.
    const [brace] = leafOf(threeFourFive).braces
    expect(brace?.angle).toBeCloseTo(53.13010235, 8)
    expect(brace?.edgeLength).toBeCloseTo(1000, 9)
    expect(brace?.length).toBeCloseTo(1072, 9)
    expect(brace?.contact).toBeCloseTo(120, 9)
    const corners = [
      [110, 270],
      [230, 270],
      [830, 1070],
      [710, 1070],
    ]
    corners.forEach(([x = 0, y = 0], i) => {
      expect(brace?.outline[i]?.[0]).toBeCloseTo(x, 9)
      expect(brace?.outline[i]?.[1]).toBeCloseTo(y, 9)
    })
  })

  it('is undefined where it is as wide as its run or wider, and is steep where it is hardly narrower', () => {
    expect(braceSlope({ clearHeight: 800, run: 96, width: 96 })).toBeUndefined()
    expect(braceSlope({ clearHeight: 800, run: 95, width: 96 })).toBeUndefined()
    expect(braceSlope({ clearHeight: 800, run: 0, width: 96 })).toBeUndefined()
    expect(toDegrees(braceSlope({ clearHeight: 800, run: 96.1, width: 96 }) as Radians)).toBeGreaterThan(89.9)
  })

  it('of no height or width is a mistake of the program', () => {
    expect(() => braceSlope({ clearHeight: 0, run: 700, width: 95 })).toThrow(RangeError)
    expect(() => braceSlope({ clearHeight: 900, run: 700, width: 0 })).toThrow(RangeError)
  })
})

/** A gate whose one brace leans 4 up for 3 along: clear height 800, run 720, brace 96 wide. */
const threeFourFive = gateWith({
  size: { height: 1340 },
  braces: {
    footSetback: 100,
    headSetback: 106,
    section: { name: 'b', species: 'redwood', thickness: 28, width: 96 },
  },
})

describe('a brace that can’t fit', () => {
  const stop = (parts: Parameters<typeof gateWith>[0]) =>
    checksOf(gateWith(parts)).find((check) => check.id === 'brace-no-fit')

  it('is a stop that says the brace is too wide for its run, and what to change', () => {
    const check = stop({
      braces: {
        footSetback: 400,
        headSetback: 400,
        section: { name: 'b', species: 'oak', thickness: 28, width: 130 },
      },
    })
    expect(check?.level).toBe('stop')
    expect(check?.message).toBe(
      'The brace doesn’t fit: a brace 130 mm wide needs a run of more than its own width and has 126 mm.',
    )
    expect(check?.remedy).toContain('narrower than 126 mm')
    expect(check?.field).toBe('braces.section')
  })

  it('is a stop that names the setbacks where they leave no run', () => {
    const check = stop({ braces: { footSetback: 500, headSetback: 450 } })
    expect(check?.message).toContain('the setbacks leave no run')
    expect(check?.field).toBe('braces.footSetback')
  })

  it('is a stop that names the ledges where they touch', () => {
    // Two ledges of 145 that meet at 600: centres 527.5 and 672.5. Touching is no overlap, but leaves no room.
    for (const top of [672.5, 672.5 - 1e-13, 672.5 + 1e-13]) {
      const checks = checksOf(gateWith({ ledges: { heights: [527.5, top] } }))
      expect(checks.map((check) => check.id)).toContain('brace-no-fit')
      expect(checks.map((check) => check.id)).not.toContain('ledges-overlap')
    }
  })
})

describe('braces over three ledges', () => {
  it('lean by their own bay, or all along the slope from bottom to top ledge', () => {
    const three = { ledges: { count: 3 as const } }
    const each = leafOf(gateWith(three)).braces
    const inLine = leafOf(gateWith({ ...three, braces: { run: 'in-line' } })).braces
    expect(each.map((brace) => brace.name)).toEqual(['lower', 'upper'])
    expect(inLine.map((brace) => brace.name)).toEqual(['lower', 'upper'])
    // 1780 − 540 = 1240 between the outer ledges; each bay (1240 − 145) / 2 = 547.5. Run 926 − 40 − 35 = 851.
    const slopeOf = (clearHeight: number) =>
      toDegrees(braceSlope({ clearHeight, run: 851, width: 95 }) as Radians)
    for (const brace of each) expect(brace.angle).toBeCloseTo(slopeOf(547.5), 9)
    for (const brace of inLine) expect(brace.angle).toBeCloseTo(slopeOf(1240), 9)
    for (const brace of inLine)
      expect(brace.edgeLength).toBeCloseTo(547.5 / Math.sin((slopeOf(1240) * Math.PI) / 180), 9)
  })

  it('stand on the short upper edge of a splayed ledge', () => {
    const angle = 12
    const { braces, ledges } = leafOf(
      gateWith({ boards: { rip: 'both' }, ledges: { end: { cut: 'splayed', angle } } }),
    )
    const off = 145 * Math.tan((angle * Math.PI) / 180)
    expect(ledges[0]?.shortLength).toBeCloseTo(926 - 2 * off, 9)
    expect(braces[0]?.run).toBeCloseTo(926 - off - 40 - 35, 9)
    expect(braces[0]?.outline[0]?.[0]).toBeCloseTo(10 + off + 40, 9)
    expect(braces[0]?.outline[2]?.[0]).toBeCloseTo(10 + 926 - 35, 9)
  })
})

describe('the foot of a brace', () => {
  it.each(['left', 'right'] as const)(
    'is at the hinge side of a gate hung %s, as its back lies on the bench',
    (hung) => {
      const spec = { ...gate, hung }
      const { back } = gateDrawings(spec, designOf(spec), 'mm')
      const outline = back.marks.flatMap((mark) =>
        mark.kind === 'polygon' && mark.part === 'single brace' ? [mark.points] : [],
      )[0] as Point[]
      const byHeight = [...outline].sort((a, b) => a[1] - b[1])
      const mean = (points: Point[]) => points.reduce((sum, [x]) => sum + x / points.length, 0)
      const [foot, head] = [mean(byHeight.slice(0, 2)), mean(byHeight.slice(2))]
      // A gate hung left on its face has its hinges at the right when it lies face down. The leaf is 950 wide.
      if (hung === 'left') {
        expect(foot).toBeGreaterThan(950 * 0.75)
        expect(head).toBeLessThan(950 * 0.25)
      } else {
        expect(foot).toBeLessThan(950 * 0.25)
        expect(head).toBeGreaterThan(950 * 0.75)
      }
    },
  )
})
