import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { design } from '../../shared/gate/design.ts'
import type { Fitting } from '../../shared/ironmongery/fitting.ts'
import { signedArea } from '../../shared/geometry/polygon.ts'
import { designOf, gateWith } from '../fixtures/gates.ts'
import { randomWholeGate } from '../fixtures/randomWholeGates.ts'
import { seed } from '../fixtures/sample.ts'
import { ownHinge, withProposal } from './hungGates.ts'

const fitted = (spec: ReturnType<typeof gateWith>): Fitting[] => designOf(spec).fittings

const plain = withProposal(gateWith({}))
const ofKind = (kind: Fitting['kind'], spec = plain): Fitting => {
  const found = fitted(spec).find((one) => one.kind === kind)
  if (!found) throw new Error(`no ${kind}`)
  return found
}

const listed = (id: string, kind: Fitting['kind'], quantity: number, heights?: number[]) => ({
  id,
  kind,
  name: id,
  quantity,
  ...(heights ? { heights } : {}),
})

describe('fittings', () => {
  it('lay each strap on its ledge’s centre line from the pin, in the leaf’s own coordinates', () => {
    const hinge = ofKind('hinge', { ...plain, site: { pinInset: -12 } })
    expect(hinge).toMatchObject({ leaf: 'leaf', on: 'bottom ledge', height: 197.5, surface: 'back' })
    const strap = hinge.shapes.find(({ part }) => part === 'strap')
    const xs = strap?.outline.map(([x]) => x) ?? []
    expect(Math.min(...xs)).toBe(-12)
    expect(Math.max(...xs)).toBe(588)
    const ys = strap?.outline.map(([, y]) => y) ?? []
    // The listed strap of 600 is 50 wide.
    expect([Math.min(...ys), Math.max(...ys)]).toEqual([172.5, 222.5])
  })

  it('put hinges on the face of a gate that opens to the face', () => {
    expect(ofKind('hinge', { ...plain, opens: 'to-face' }).surface).toBe('face')
    expect(ofKind('lock', { ...plain, opens: 'to-face' }).surface).toBe('back')
  })

  // EN 1995-1-1 §10.4.3, from memory: a bolt's hole at most 1 mm over it; here the workshop's 0.5.
  it('drill bolt holes of a hook-and-band set at bolt and clearance: 10 and 0.5', () => {
    const spec = gateWith({}, { ironmongery: [listed('hook-and-band-600-galvanised', 'hinge', 2)] })
    const hole = fitted(spec)[0]?.drillings.find(({ what }) => what === 'bolt hole')
    expect(hole).toMatchObject({ count: 2, size: { exact: 10.5, drill: 12 }, depth: null })
    expect(hole?.places).toEqual([
      [60, 197.5],
      [540, 197.5],
    ])
    const loose = { ...spec, workshop: { ...spec.workshop!, clearance: 2.5 } }
    expect(fitted(loose)[0]?.drillings[0]?.size.exact).toBe(11)
  })

  // Tee of 600: holes 6 in the metal, so screws of 5.5; root 3.6667; 7/8 of it by NDS-2018 §12.1.5.3; wood 48 less 3.
  it('drill lead holes for screws by the rule chosen, short of the face', () => {
    const lead = ofKind('hinge').drillings.find(({ what }) => what === 'screw hole')
    expect(lead?.count).toBe(7)
    expect(lead?.size.exact).toBeCloseTo(3.208333, 6)
    expect(lead?.depth).toBe(45)
    const shared = { ...plain, workshop: { ...plain.workshop!, leadRule: 'shank-share' as const } }
    expect(ofKind('hinge', shared).drillings.at(-1)?.size.exact).toBeCloseTo(0.7 * 5.5, 9)
  })

  it('drill both ends of a keyhole at the lock’s backset from the closing edge', () => {
    const keyhole = ofKind('lock').drillings.find(({ what }) => what === 'keyhole')
    // 950 − 72; slot 24 high drilled 10: ends 7 above and below 927.5.
    expect(keyhole?.places).toEqual([
      [878, 934.5],
      [878, 920.5],
    ])
  })

  it('measure a lock at the hanging edge from that edge', () => {
    const spec = gateWith(
      {},
      { ironmongery: [{ ...listed('rim-lock-150-galvanised', 'lock', 1, [900]), side: 'hanging' }] },
    )
    const lock = fitted(spec)[0]
    expect(lock?.drillings[0]?.places[0]?.[0]).toBe(105)
    expect(lock?.drillings.find(({ what }) => what === 'spindle hole')?.places).toEqual([[105, 925]])
  })

  it('fall back on the spec’s own values for a piece in no list', () => {
    const [hinge] = fitted(gateWith({}, { ironmongery: [ownHinge] }))
    expect(hinge).toMatchObject({ name: 'Forged strap', drillings: [], height: 197.5 })
    expect(Math.max(...(hinge?.shapes[0]?.outline.map(([x]) => x) ?? []))).toBe(520)
  })

  it('stand a drop bolt on the foot and a top bolt under the top, by name where they are in no list', () => {
    const spec = gateWith(
      {},
      {
        ironmongery: [
          listed('drop-bolt-450-galvanised', 'bolt', 1),
          { ...listed('mine', 'bolt', 1), name: 'Own drop bolt' },
        ],
      },
    )
    expect(fitted(spec).map(({ height, socket }) => [height, socket])).toEqual([
      [225, 22],
      [100, null],
    ])
  })

  // Lane drop bolt 600: throw 150, plate 60 wide, 15 in from the edge of 950: its middle at 950 − 15 − 30 = 905. Room past the rod 10, common practice.
  it('place a drop bolt’s socket across from the hanging edge, and as deep as the rod goes and 10 more', () => {
    const spec = gateWith({}, { ironmongery: [listed('drop-bolt-600-galvanised', 'bolt', 1)] })
    const [bolt] = fitted(spec)
    expect(bolt?.socketPlace).toEqual({ across: 905, depth: 160, reach: null })
    const { figures } = designOf(spec)
    expect(figures['fitting.bolt.1.socketAcross']).toMatchObject({
      value: 905,
      inputs: { 'width of the plate': 60 },
    })
    expect(figures['fitting.bolt.1.socketHole']?.value).toBe(25)
    expect(figures['fitting.bolt.1.socketDepth']?.value).toBe(160)
  })

  it.each([
    ['drop-bolt-600-galvanised', undefined, 113, 103],
    // Its lower end is 33 over the foot there.
    ['drop-bolt-600-galvanised', 333, 80, 70],
    // Throw 60, under a head 9 away.
    ['top-bolt-300-galvanised', undefined, 61, 51],
    // Throw 50, across a closing gap of 13.
    ['barrel-bolt-200-galvanised', undefined, 47, 37],
  ])('take the gap that %s crosses off its depth, where it was surveyed', (id, height, depth, reach) => {
    const size = {
      from: 'opening' as const,
      widths: [967, 967, 967] as [number, number, number],
      heights: [1831, 1831] as [number, number],
      hangingGap: 5,
      closingGap: 13,
      groundGap: 47,
      headGap: 9,
    }
    const spec = gateWith({}, { size, ironmongery: [listed(id, 'bolt', 1, height ? [height] : undefined)] })
    const [bolt] = fitted(spec)
    expect(bolt?.socketPlace).toMatchObject({ depth, reach })
    expect(designOf(spec).figures['fitting.bolt.1.socketDepth']?.value).toBe(depth)
    const rising = { ...spec, site: { slopeAlong: 0.02 } }
    if (id.startsWith('drop')) expect(fitted(rising)[0]?.socketPlace?.reach).toBeNull()
  })

  it('stand where the spec says, whatever lies there', () => {
    const spec = gateWith({}, { ironmongery: [listed('thumb-latch-230-galvanised', 'latch', 1, [1234])] })
    expect(fitted(spec)[0]?.height).toBe(1234)
    expect(designOf(spec).figures['fitting.latch.1.height']).toMatchObject({
      value: 1234,
      formula: 'height as entered',
    })
  })

  it('of random gates are drawn with anticlockwise outlines and rest on figures that are there', () => {
    let seen = 0
    fc.assert(
      fc.property(randomWholeGate, (spec) => {
        const outcome = design(spec)
        if (!outcome.made) return
        const { fittings, figures } = outcome.design
        for (const { shapes, figures: ids, drillings } of fittings) {
          seen += 1
          for (const { outline } of shapes) expect(signedArea(outline)).toBeGreaterThan(0)
          for (const id of ids) expect(figures[id]).toBeDefined()
          for (const { count, places, size } of drillings) {
            expect(places).toHaveLength(count)
            expect(size.exact).toBeGreaterThan(0)
          }
        }
      }),
      { seed, numRuns: 400 },
    )
    expect(seen).toBeGreaterThan(100)
  })
})
