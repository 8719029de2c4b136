import { describe, expect, it } from 'vitest'
import { sourceOf, withSources } from '../../shared/drawing/figureSources.ts'
import { gateDrawings } from '../../shared/drawing/gateDrawings.ts'
import { holdsOf } from '../../shared/drawing/holds.ts'
import { changeOf, nextOnWay, refusalOf, snapped, stepsOn, type Way } from '../../shared/drawing/moving.ts'
import { design } from '../../shared/gate/design.ts'
import type { Check } from '../../shared/gate/checks.ts'
import type { Design } from '../../shared/gate/designModel.ts'
import type { GateSpec } from '../../shared/gate/spec.ts'
import { canHold, placedAt, valueAt } from '../../shared/job/specPath.ts'
import { standardDraft } from '../../shared/gate/standardSpec.ts'
import { wholeGates } from './wholeGates.ts'

const made = (spec: GateSpec): Design => {
  const outcome = design(spec)
  if (!outcome.made) throw new Error('can’t be made')
  return outcome.design
}
const plain: GateSpec = {
  ...(standardDraft() as GateSpec),
  size: { from: 'leaf', width: 985, height: 1830 },
  ironmongery: [{ id: 'tee-450', kind: 'hinge', name: 'Tee hinge 450', quantity: 2, strapLength: 450 }],
}

describe('where a dimension comes from', () => {
  it('every entry a figure of a drawing names gives that very figure, in each of the forty gates', () => {
    let entries = 0
    for (const { name, spec } of wholeGates) {
      const { back, face, section } = gateDrawings(spec, made(spec), 'mm')
      const worked = made(spec)
      const seen = new Set<string>()
      for (const drawing of [back, face, section])
        for (const mark of drawing.marks)
          for (const source of mark.kind === 'chain' ? mark.labels.map((label) => label?.source) : []) {
            if (source?.worked !== undefined) expect(worked.figures[source.worked], name).toBeDefined()
            if (!source?.entry || seen.has(source.entry.field)) continue
            seen.add(source.entry.field)
            entries += 1
            const { field, times, add } = source.entry
            const { path, value } = changeOf(spec, worked, { field, value: times * source.mm + add })
            const at = path.split('.').slice(1)
            expect(canHold(spec, at), `${name} ${field}`).toBe(true)
            const again = made(placedAt(spec, at, value) as GateSpec)
            expect(again.leaves.map((leaf) => leaf.width)).toEqual(worked.leaves.map((leaf) => leaf.width))
            again.leaves[0]?.ledges.forEach((ledge, i) =>
              expect(ledge.y, `${name} ${field}`).toBeCloseTo(worked.leaves[0]?.ledges[i]?.y ?? 0, 2),
            )
          }
    }
    expect(entries).toBeGreaterThan(200)
  })

  it('names the leaf’s width as the entry it is, and a width out of a measured opening by its working', () => {
    const leaf = made(plain).leaves[0]
    if (!leaf) throw new Error('no leaf')
    const gate = { spec: plain, design: made(plain), leaf }
    expect(sourceOf('dimension width', 985, gate)?.entry?.field).toBe('size.width')
    expect(sourceOf('dimension ledge length', 965, gate)?.worked).toBe('ledge.bottom.length')
    const opening: GateSpec = {
      ...plain,
      size: {
        from: 'opening',
        widths: [1001, 1003, 1006],
        heights: [1880, 1882],
        hangingGap: 6,
        closingGap: 10,
        groundGap: 50,
      },
    }
    expect(sourceOf('dimension width', 985, { ...gate, spec: opening })?.worked).toBe('leaf.width')
  })

  it('a length under the bottom ledge sets that ledge, one over the top ledge sets it the other way', () => {
    const worked = made(plain)
    const leaf = worked.leaves[0]
    if (!leaf) throw new Error('no leaf')
    const gate = { spec: plain, design: worked, leaf }
    expect(sourceOf('dimension foot to bottom ledge', 125, gate)?.entry).toEqual({
      field: 'ledges.heights.0',
      times: 1,
      add: 72.5,
    })
    expect(sourceOf('dimension bay 3', 125, gate)?.entry).toEqual({
      field: 'ledges.heights.2',
      times: -1,
      add: 1757.5,
    })
  })

  it('leaves the drawing as it was but for the sources', () => {
    const { back } = gateDrawings(plain, made(plain), 'mm')
    const again = withSources(back, { spec: plain, design: made(plain) })
    expect(again).toEqual(back)
  })
})

describe('what can be taken hold of', () => {
  it('ledges, both ends of the brace and the hinges, in every gate with its value at its entry', () => {
    for (const { name, spec } of wholeGates)
      for (const view of ['back', 'face'] as const)
        for (const hold of holdsOf(spec, made(spec), view)) {
          const stands = valueAt(spec, hold.field.split('.'))
          if (!hold.byRule) expect(stands, `${name} ${hold.field}`).toBeCloseTo(hold.value, 6)
          expect(hold.limits[0], `${name} ${hold.name}`).toBeLessThanOrEqual(hold.value + 0.01)
          expect(hold.limits[1], `${name} ${hold.name}`).toBeGreaterThanOrEqual(hold.value - 0.01)
        }
  })

  it('from the back of a plain gate: three ledges, foot and head of the braces, two hinges; from the face nothing', () => {
    const names = (view: 'back' | 'face') => holdsOf(plain, made(plain), view).map(({ name }) => name)
    expect(names('back')).toEqual([
      ...['Bottom ledge', 'Middle ledge', 'Top ledge', 'Brace foot', 'Brace head'],
      ...['Bottom hinge', 'Top hinge'],
    ])
    expect(names('face')).toEqual([])
  })

  it('turned over by the hand, the place goes to the other side and the brace’s foot moves the other way', () => {
    const foot = (hung: 'left' | 'right') =>
      holdsOf({ ...plain, hung }, made(plain), 'back').find(({ name }) => name === 'Brace foot')
    expect(foot('right')?.sign).toBe(1)
    expect(foot('left')?.sign).toBe(-1)
    expect((foot('right')?.at[0] ?? 0) + (foot('left')?.at[0] ?? 0)).toBeCloseTo(985, 6)
  })

  it('moving a ledge that the rule placed makes all its heights the joiner’s own, the others where they stood', () => {
    const change = changeOf(plain, made(plain), { field: 'ledges.heights.0', value: 310 })
    expect(change).toEqual({ path: 'spec.ledges.heights', value: [310, 915, 1632.5] })
    const own = { ...plain, ledges: { ...plain.ledges, heights: [310, 915, 1632.5] } }
    expect(changeOf(own, made(own), { field: 'ledges.heights.1', value: 900 })).toEqual({
      path: 'spec.ledges.heights.1',
      value: 900,
    })
  })

  it('moving a hinge that the rule placed gives both their heights', () => {
    expect(changeOf(plain, made(plain), { field: 'ironmongery.0.heights.1', value: 1600 })).toEqual({
      path: 'spec.ironmongery.0.heights',
      value: [197.5, 1600],
    })
  })
})

describe('moving', () => {
  it('goes by whole mm, or by sixteenths, and stops at the last whole step within the limits', () => {
    expect(snapped(310.4, { limits: [72.5, 900], unit: 'mm' })).toBe(310)
    expect(snapped(310.4, { limits: [72.5, 900], unit: 'in' })).toBe(311.15)
    expect(snapped(40, { limits: [72.5, 900], unit: 'mm' })).toBe(73)
    expect(snapped(990, { limits: [72.5, 900.5], unit: 'mm' })).toBe(900)
  })

  it('an arrow key goes to the next whole step, ten of them with Shift', () => {
    const at = { limits: [0, 900] as [number, number], unit: 'mm' as const }
    expect(stepsOn(197.5, 1, at)).toBe(198)
    expect(stepsOn(197.5, -1, at)).toBe(197)
    expect(stepsOn(198, 10, at)).toBe(208)
    expect(stepsOn(25.4, 1, { ...at, unit: 'in' })).toBe(26.9875)
  })

  const stop: Check = { id: 'x', level: 'stop', message: 'no', figures: [], remedy: '', field: '' }
  const search = (from: Way, wanted: number, least: number): { way: Way; tries: number } => {
    let [way, done, tries] = [from, false, 0]
    while (!done) {
      const next = nextOnWay(way, wanted, {
        unit: 'mm',
        tried: (value) => {
          tries += 1
          return value > least ? stop : null
        },
      })
      way = next.way
      done = next.done
    }
    return { way, tries }
  }

  it('finds the last place that the gate can be made with, a try at a time', () => {
    const { way, tries } = search({ good: 100, past: null }, 700, 433)
    expect(way.good).toBe(433)
    expect(way.past).toEqual({ value: 434, why: stop })
    expect(tries).toBeLessThanOrEqual(11)
    expect(search(way, 350, 433).way).toEqual({ good: 350, past: null })
  })

  it('says why a ledge can’t come so near the next that its brace no longer fits', () => {
    const low = { ...plain, braces: plain.braces && { ...plain.braces, run: 'each-bay' as const } }
    expect(
      refusalOf(low, changeOf(low, made(low), { field: 'ledges.heights.1', value: 1500 })),
    ).not.toBeNull()
    expect(refusalOf(low, changeOf(low, made(low), { field: 'ledges.heights.1', value: 920 }))).toBeNull()
  })
})
