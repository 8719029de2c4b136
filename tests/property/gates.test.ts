import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { design } from '../../shared/gate/design.ts'
import { parseSpec } from '../../shared/gate/parseSpec.ts'
import { everyGate, near } from '../fixtures/holds.ts'
import { randomGate } from '../fixtures/randomGates.ts'
import { sampleSize, seed } from '../fixtures/sample.ts'

const numRuns = sampleSize('Whole gates', { usual: 1200, long: 50_000 })

describe('every random gate', () => {
  it('is let through by the reader of specs', () => {
    fc.assert(
      fc.property(randomGate, (spec) => {
        const read = parseSpec(spec)
        if (!read.ok) throw new Error(JSON.stringify(read.problems))
      }),
      { seed, numRuns },
    )
  })

  it('comes out whole, or as a stop with its reasons and nothing else', () => {
    const seen = { made: 0, stopped: 0 }
    fc.assert(
      fc.property(randomGate, (spec) => {
        const outcome = design(spec)
        if (outcome.made) {
          seen.made += 1
          const [leaf] = outcome.design.leaves
          expect(outcome.design.checks.every((check) => check.level !== 'stop')).toBe(true)
          expect(leaf && leaf.boards.length > 0 && leaf.ledges.length >= 2 && leaf.fixings.length > 0).toBe(
            true,
          )
          expect(leaf?.braces.length).toBe(spec.braces ? (leaf?.ledges.length ?? 0) - 1 : 0)
          expect(outcome.design.cuts.length).toBeGreaterThanOrEqual(2)
          expect(outcome.design.steps.length).toBeGreaterThan(5)
        } else {
          seen.stopped += 1
          expect(Object.keys(outcome.stopped).sort()).toEqual(['checks', 'engine', 'leaves'])
          expect(outcome.stopped.leaves).toEqual([])
          expect(outcome.stopped.checks.some((check) => check.level === 'stop')).toBe(true)
        }
      }),
      { seed, numRuns },
    )
    process.stdout.write(`${seen.made} made, ${seen.stopped} stopped\n`)
    expect(seen.made).toBeGreaterThan(numRuns / 2.2)
    expect(seen.stopped).toBeGreaterThan(numRuns / 50)
  })

  it('holds no NaN, no infinity, no -0, and no negative number but the bottom hinge’s push', () => {
    const walk = (value: unknown, path: string): void => {
      if (typeof value === 'number') {
        if (!Number.isFinite(value)) throw new Error(`${path} is ${value}`)
        const pushes = path.endsWith('.hinges.0.pullN')
        if ((value < 0 && !pushes) || Object.is(value, -0))
          throw new Error(`${path} is ${Object.is(value, -0) ? '-0' : value}`)
      } else if (typeof value === 'object' && value !== null)
        for (const [key, inner] of Object.entries(value)) walk(inner, `${path}.${key}`)
      else if (typeof value === 'string' && /NaN|Infinity|undefined|null|\[object/.test(value))
        throw new Error(`${path} says '${value}'`)
    }
    fc.assert(
      fc.property(randomGate, (spec) => {
        const outcome = design(spec)
        walk(outcome.made ? outcome.design : outcome.stopped, 'design')
      }),
      { seed, numRuns },
    )
  })

  it('comes out the same twice, and the same for either hand', () => {
    fc.assert(
      fc.property(randomGate, (spec) => {
        const before = JSON.stringify(spec)
        const once = JSON.stringify(design(spec))
        if (JSON.stringify(design(spec)) !== once) throw new Error('twice gave two designs')
        if (JSON.stringify(spec) !== before) throw new Error('the spec was changed')
        const handless = (hung: 'left' | 'right') => {
          const outcome = design({ ...spec, hung })
          return outcome.made ? JSON.stringify({ ...outcome.design, steps: [] }) : JSON.stringify(outcome)
        }
        if (handless('left') !== handless('right')) throw new Error('the hand changed a figure')
      }),
      { seed, numRuns },
    )
  })
})

describe('figures of a made gate', () => {
  it('each say their formula, finite inputs and source, and every check rests on figures that are there', () => {
    everyGate(numRuns, (made) => {
      for (const [id, { value, formula, inputs, source }] of Object.entries(made.figures)) {
        if (formula.trim() === '' || source.trim() === '') throw new Error(`${id} says nothing`)
        const numbers = Object.values(inputs)
        if (numbers.length === 0) throw new Error(`${id} has no inputs`)
        for (const number of [value, ...numbers])
          if (typeof number !== 'number' || !Number.isFinite(number)) throw new Error(`${id} holds ${number}`)
      }
      for (const check of made.checks) {
        expect(check.message).not.toBe('')
        expect(check.remedy).not.toBe('')
        for (const id of check.figures)
          if (!(id in made.figures)) throw new Error(`${check.id} rests on ${id}, which isn't there`)
      }
    })
  })
})

describe('cuts of a made gate', () => {
  it('are as many pieces as the leaf has, each within a quarter of a millimetre of its part', () => {
    everyGate(numRuns, (made, { boards, ledges, braces }) => {
      expect(made.cuts.reduce((sum, row) => sum + row.quantity, 0)).toBe(
        boards.length + ledges.length + braces.length,
      )
      const lengths = new Map<string, number>([
        ...boards.map((board, i) => [`board ${i + 1}`, board.length] as const),
        ...ledges.map((ledge) => [`${ledge.name} ledge`, ledge.length] as const),
        ...braces.map((brace) => [`${brace.name} brace`, brace.length] as const),
      ])
      for (const row of made.cuts) {
        expect(row.marks).toHaveLength(row.quantity)
        expect(row.length * 2).toBe(Math.round(row.length * 2))
        for (const mark of row.marks) near(row.length, lengths.get(mark) ?? -1, mark, 0.25 + 1e-6)
      }
    })
  })
})
