import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { design } from '../../shared/gate/design.ts'
import type { Design } from '../../shared/gate/designModel.ts'
import type { HangingLeaf } from '../../shared/gate/leaf.ts'
import { parseSpec } from '../../shared/gate/parseSpec.ts'
import type { GateSpec } from '../../shared/gate/spec.ts'
import { lengthTolerance } from '../../shared/geometry/point.ts'
import { atLeast, edges, near } from '../fixtures/holds.ts'
import { randomWholeGate } from '../fixtures/randomWholeGates.ts'
import { sampleSize, seed } from '../fixtures/sample.ts'
import { footOf, timberByLibrary, topOf } from '../fixtures/weighByLibrary.ts'

const numRuns = sampleSize('Whole gates of every kind', { usual: 800, long: 50_000 })
const gravity = 9.80665

/** Tries something on every gate of the sample that can be made. */
function everyGate(holds: (made: Design, spec: GateSpec) => void, runs = numRuns): void {
  const seen = { made: 0 }
  fc.assert(
    fc.property(randomWholeGate, (spec) => {
      const outcome = design(spec)
      if (!outcome.made) return
      seen.made += 1
      holds(outcome.design, spec)
    }),
    { seed, numRuns: runs },
  )
  expect(seen.made).toBeGreaterThan(runs / 2)
}

const everyLeaf = (holds: (leaf: HangingLeaf, made: Design, spec: GateSpec) => void) =>
  everyGate((made, spec) => made.leaves.forEach((leaf) => holds(leaf, made, spec)))

/** Where a number may be under 0: a push, a change, a gap that has closed, a pin or centre beyond the edge. */
const maySink = /^(leaves\.\d\.(hinges\.\d+\.pullN|boards\.\d+\.feet\.\d)|movement\.|figures\.)/

function walk(value: unknown, path: string): void {
  if (typeof value === 'number') {
    if (!Number.isFinite(value) || Object.is(value, -0))
      throw new Error(`${path} is ${Object.is(value, -0) ? '-0' : value}`)
    if (value < 0 && !maySink.test(path) && !path.includes('outline')) throw new Error(`${path} is ${value}`)
  } else if (typeof value === 'object' && value !== null)
    for (const [key, inner] of Object.entries(value)) walk(inner, path === '' ? key : `${path}.${key}`)
  else if (typeof value === 'string' && /NaN|Infinity|undefined|null|\[object/.test(value))
    throw new Error(`${path} says '${value}'`)
}

describe('every gate of every kind', () => {
  it('is let through by the reader, and comes out whole or as a stop with its reasons and nothing else', () => {
    const seen = { made: 0, kinds: new Set<string>() }
    fc.assert(
      fc.property(randomWholeGate, (spec) => {
        const read = parseSpec(spec)
        if (!read.ok) throw new Error(JSON.stringify(read.problems))
        const outcome = design(spec)
        if (!outcome.made) {
          expect(Object.keys(outcome.stopped).sort()).toEqual(['checks', 'engine', 'leaves'])
          expect(outcome.stopped.checks.some(({ level }) => level === 'stop')).toBe(true)
          walk(outcome.stopped, '')
          return
        }
        seen.made += 1
        const hanging = spec.stable ? 'stable' : String(spec.leaves)
        seen.kinds.add(`${spec.construction} ${hanging} ${spec.top.shape} ${spec.hung}`)
        expect(outcome.design.checks.every(({ level }) => level !== 'stop')).toBe(true)
        expect(outcome.design.leaves).toHaveLength(spec.stable ? 2 : spec.leaves)
        expect(outcome.design.movement === null).toBe(spec.climate === undefined)
        walk(outcome.design, '')
      }),
      { seed, numRuns },
    )
    process.stdout.write(`${seen.made} of ${numRuns} made, of ${seen.kinds.size} kinds\n`)
    // Three constructions, three ways of hanging, four tops, two hands.
    expect(seen.kinds.size).toBe(72)
  })

  it('is the same for either hand', () => {
    everyGate((made, spec) => {
      const other = design({ ...spec, hung: spec.hung === 'left' ? 'right' : 'left' })
      if (!other.made) throw new Error('the hand stopped it')
      expect(JSON.stringify({ ...other.design, steps: [] })).toBe(JSON.stringify({ ...made, steps: [] }))
    }, numRuns / 5)
  })

  it('says of every figure its formula, inputs and source, and rests every check on figures that are there', () => {
    everyGate((made) => {
      for (const [id, { value, formula, inputs, source }] of Object.entries(made.figures)) {
        if (formula.trim() === '' || source.trim() === '') throw new Error(`${id} says nothing`)
        const numbers = Object.values(inputs)
        if (numbers.length === 0) throw new Error(`${id} has no inputs`)
        if (![value, ...numbers].every(Number.isFinite)) throw new Error(`${id} isn't finite`)
      }
      for (const { id, message, remedy, field, figures } of made.checks) {
        if ([message, remedy, field].some((text) => text.trim() === '')) throw new Error(`${id} says nothing`)
        for (const one of figures) if (!(one in made.figures)) throw new Error(`${id} rests on ${one}`)
      }
    })
  })
})

describe('the parts of a leaf', () => {
  it('fit inside it', () => {
    everyLeaf((leaf, _made, spec) => {
      const [foot, top] = [footOf(spec, leaf), topOf(spec, leaf)]
      for (const { x, width, heads, feet } of leaf.boards) {
        atLeast(x, 0, 'board from the hanging edge')
        atLeast(leaf.width, x + width, 'board from the closing edge')
        const ends = [x, x + width] as const
        ends.forEach((at, i) => {
          atLeast(top(at), heads[i] as number, 'head under the top')
          near(feet[i] as number, foot(at), 'foot on its line')
        })
      }
      for (const ledge of leaf.ledges) {
        const [low, high] = edges(ledge)
        atLeast(ledge.x, 0, 'ledge from the hanging edge')
        atLeast(leaf.width, ledge.x + ledge.length, 'ledge from the closing edge')
        for (const at of [ledge.x, ledge.x + ledge.length]) {
          atLeast(low, foot(at), 'ledge over the foot')
          atLeast(top(at), high, 'ledge under the top')
        }
      }
      for (const { outline } of [...leaf.braces, ...leaf.frame])
        for (const [x, y] of outline) {
          atLeast(x, 0, 'part from the hanging edge')
          atLeast(leaf.width, x, 'part from the closing edge')
          atLeast(y, foot(x), 'part over the foot')
          atLeast(top(x), y, 'part under the top')
        }
    })
  })

  it('add up: boards and gaps fill the leaf, or the frame and its rebates', () => {
    everyLeaf((leaf, made, spec) => {
      const gap = made.movement?.gap ?? (spec.boards.gap as number)
      const covered = leaf.boards.reduce((sum, { width }) => sum + width, (leaf.boards.length - 1) * gap)
      const fills = spec.frame ? leaf.width - 2 * spec.frame.stile.width + 2 * spec.frame.rebate : leaf.width
      near(covered, fills, 'boards and gaps')
    })
  })

  it('of a framed gate keep the thickness of stile and rail at ledge and board together', () => {
    everyGate((_made, spec) => {
      if (!spec.frame) return
      const together = spec.ledges.section.thickness + spec.boards.section.thickness
      near(spec.frame.stile.thickness, together, 'stile')
      near(spec.frame.topRail.thickness, together, 'top rail')
    })
  })

  it('are alike on both leaves of a pair, which meet at one height', () => {
    everyGate((made, spec) => {
      const [first, second] = made.leaves
      if (spec.leaves !== 2 || !first || !second || spec.foot === 'follows-ground') return
      // A rebated meeting leaves the first leaf's closing edge wider by its lap; all that is seen stays alike.
      const partsOf = ({ boards, ledges, braces, frame, fixings, width, height }: HangingLeaf) =>
        JSON.stringify([
          boards.map((board) => [board.x, board.width, board.length, board.blank, board.heads, board.feet]),
          frame.map(({ name, length, outline }) => [name, length, outline]),
          { ledges, braces, fixings, width, height },
        ])
      expect(partsOf(second)).toBe(partsOf(first))
    })
  })
})

describe('a curved top', () => {
  it('has every height on its circle', () => {
    everyGate((made, spec) => {
      if (spec.top.shape !== 'bowed' && spec.top.shape !== 'dipped') return
      for (const prefix of ['', 'second.', 'upper.']) {
        const radius = made.figures[`${prefix}top.radius`]
        if (!radius) continue
        const middle = (radius.inputs['span'] as number) / 2
        for (const [id, { value, inputs }] of Object.entries(made.figures)) {
          if (!id.startsWith(`${prefix}top.height.`)) continue
          const highest = inputs['leaf height'] as number
          const centre =
            spec.top.shape === 'bowed'
              ? highest - radius.value
              : highest - (inputs['rise'] as number) + radius.value
          near(
            Math.hypot((inputs['x'] as number) - middle, value - centre),
            radius.value,
            `${id} from the centre`,
            1e-9,
          )
        }
      }
    })
  })
})

describe('weight', () => {
  it('and its centre are those of polygons measured by another library, with the ironmongery added', () => {
    everyLeaf((leaf, made, spec) => {
      const timber = timberByLibrary(spec, leaf)
      const prefix = { 'second leaf': 'second.', 'upper half': 'upper.' }[leaf.name as string] ?? ''
      const metal = ['hanging', 'closing'].reduce(
        (sum, side) => sum + (made.figures[`${prefix}weight.ironmongery.${side}`]?.value ?? 0),
        0,
      )
      near(leaf.massKg, timber.mass + metal, 'mass', leaf.massKg * 5e-5)
      if (metal > 0) return
      near(leaf.centre.x, timber.x / timber.mass, 'centre across', 0.02)
      near(leaf.centre.y, timber.y / timber.mass, 'centre up', 0.02)
    })
  })

  it('of the whole is that of its parts together', () => {
    everyLeaf((leaf, made) => {
      const prefix = { 'second leaf': 'second.', 'upper half': 'upper.' }[leaf.name as string] ?? ''
      const parts = ['boards', 'ledges', 'braces', 'frame', 'ironmongery.hanging', 'ironmongery.closing']
      const sum = parts.reduce((all, part) => all + (made.figures[`${prefix}weight.${part}`]?.value ?? 0), 0)
      near(sum, leaf.massKg, 'sum of the parts', 1e-9)
      const volume = (part: string) => made.figures[`${prefix}weight.${part}`]?.inputs['volume m³'] ?? 0
      const density = (part: string) =>
        made.figures[`${prefix}weight.${part}`]?.inputs['mean density kg/m³'] ?? 0
      for (const part of parts.slice(0, 4))
        near(volume(part) * density(part), made.figures[`${prefix}weight.${part}`]?.value ?? 0, part, 1e-9)
    })
  })

  it('of the ironmongery is all there, on one leaf or the other', () => {
    everyGate((made, spec) => {
      const listed = spec.ironmongery.reduce((sum, { massKg = 0, quantity }) => sum + massKg * quantity, 0)
      const placed = Object.entries(made.figures)
        .filter(([id]) => /(^|\.)weight\.ironmongery\./.test(id))
        .reduce((sum, [, { value }]) => sum + value, 0)
      near(placed, listed, 'ironmongery', 1e-9)
    })
  })
})

describe('hinges', () => {
  it('pull and push alike, and turn the leaf as hard as its weight does', () => {
    everyLeaf((leaf, _made, spec) => {
      const [bottom, top] = [leaf.hinges[0], leaf.hinges.at(-1)]
      if (!bottom || !top) throw new Error('no hinges')
      near(bottom.pullN + top.pullN, 0, 'pull and push', 1e-9)
      const turn = leaf.massKg * gravity * (leaf.centre.x - (spec.site?.pinInset ?? 0))
      near(top.pullN * (top.y - bottom.y), turn, 'couple', Math.abs(turn) * 1e-12)
      near(
        leaf.hinges.reduce((sum, { shareN }) => sum + shareN, 0),
        leaf.massKg * gravity,
        'weight',
        1e-9,
      )
      for (const { pullN } of leaf.hinges.slice(1, -1)) expect(pullN).toBe(0)
    })
  })

  it('twice as far apart pull half as hard', () => {
    everyGate((_made, spec) => {
      if (spec.stable) return
      const hung = (heights: number[]): HangingLeaf => {
        const hinges = { id: 'h', kind: 'hinge' as const, name: 'hinge', quantity: 2 * spec.leaves, heights }
        const outcome = design({ ...spec, ironmongery: [hinges] })
        if (!outcome.made) throw new Error('hinges stopped it')
        return outcome.design.leaves[0] as HangingLeaf
      }
      const [near1, far] = [hung([200, 700]), hung([200, 1200])]
      near(far.hinges[1]?.pullN ?? 0, (near1.hinges[1]?.pullN ?? 1) / 2, 'half the pull', 1e-9)
    })
  })
})

describe('movement', () => {
  it('is nothing in the air of the shop, and what it takes from a joint the boards have gained', () => {
    everyGate((made, spec) => {
      const { movement } = made
      if (!movement) return
      const cover = spec.boards.section.width
      for (const air of [movement.wettest, movement.driest])
        near(air.jointGap + air.boardChange, movement.gap, `joint of a cover of ${cover}`, 1e-9)
      expect(movement.shop.boards.every((change) => change === 0)).toBe(true)
      expect(movement.shop.leafWidth).toBe(made.leaves[0]?.width)
      expect(movement.shop.jointGap).toBe(movement.gap)
      expect(Math.sign(movement.wettest.boardChange)).toBe(
        Math.sign(Math.min(movement.wettest.moisture, 30) - Math.min(movement.shop.moisture, 30) || 0),
      )
    })
  })

  it('leaves joints open at the wettest when the gap is left to the climate', () => {
    everyGate((made, spec) => {
      if (spec.boards.gap !== 'auto' || !made.movement) return
      atLeast(made.movement.wettest.jointGap, 0, 'gap at the wettest')
      near(made.movement.gap * 2, Math.round(made.movement.gap * 2), 'half millimetres', lengthTolerance)
    })
  })
})
