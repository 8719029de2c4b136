import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Primitive } from '../../shared/drawing/primitives.ts'
import { barPieces } from '../../shared/ordering/barPieces.ts'
import { air, barHeight, jobOfMark, type DiagramOf } from '../../shared/ordering/barSheet.ts'
import { barWords } from '../../shared/ordering/barWords.ts'
import { cuttingDiagram } from '../../shared/ordering/cuttingDiagram.ts'
import { slantOf } from '../../shared/ordering/drawPair.ts'
import type { BracePair } from '../../shared/ordering/orderModel.ts'
import { sampleSize, seed } from '../fixtures/sample.ts'

const cutting = { kerf: 4, endTrim: 20, leastOffcut: 450 }
const write = (mm: number) => String(mm)
const diagramOf = (given: Partial<DiagramOf>): DiagramOf => ({
  ...{ bars: [], cutting, pairs: [], numbers: ['2026-014', '2026-015'], write },
  ...given,
})
const texts = (primitives: readonly Primitive[]): string[] =>
  primitives.flatMap((one) => (one.kind === 'text' ? [one.text] : []))

/** From which x to which x a shape reaches. */
const reachOf = (one: Primitive): [number, number] => {
  if (one.kind !== 'path') throw new Error('no shape')
  const across = one.points.map(([x]) => x)
  return [Math.min(...across), Math.max(...across)]
}

describe('what a length is sawn into', () => {
  it('is trimmed, then each part with its cut behind it, then what is left', () => {
    const cuts = [
      { length: 1830, mark: '2026-014 board' },
      { length: 477, mark: '2026-015 board' },
    ]
    expect(barPieces({ from: 'merchant', length: 3000, cuts }, cutting)).toEqual([
      { from: 0, to: 20, kind: 'trim' },
      { from: 20, to: 1850, kind: 'part', mark: '2026-014 board' },
      { from: 1850, to: 1854, kind: 'kerf' },
      { from: 1854, to: 2331, kind: 'part', mark: '2026-015 board' },
      { from: 2331, to: 2335, kind: 'kerf' },
      { from: 2335, to: 3000, kind: 'kept' },
    ])
  })

  it('loses no trim from the rack, and its last cut takes only what is there', () => {
    const rack = { from: 'rack', length: 1002.5, cuts: [{ length: 1000 }] } as const
    expect(barPieces(rack, cutting)).toEqual([
      { from: 0, to: 1000, kind: 'part', mark: '' },
      { from: 1000, to: 1002.5, kind: 'kerf' },
    ])
    const whole = { ...rack, cuts: [{ length: 1002.5 }] }
    expect(barPieces(whole, cutting)).toEqual([{ from: 0, to: 1002.5, kind: 'part', mark: '' }])
  })

  it('keeps an offcut that is just long enough, and calls one a tenth shorter waste', () => {
    const left = (length: number) =>
      barPieces({ from: 'rack', length, cuts: [{ length: 300 }] }, cutting).at(-1)
    expect(left(754)?.kind).toBe('kept')
    expect(left(753.9)?.kind).toBe('waste')
  })
})

const runs = sampleSize('Lengths drawn to scale', { usual: 300, long: 20_000, of: 'lengths' })
const aLength = fc.record({
  from: fc.constantFrom('merchant' as const, 'rack' as const),
  spare: fc.integer({ min: 0, max: 15_000 }),
  parts: fc.array(fc.integer({ min: 500, max: 24_000 }), { minLength: 1, maxLength: 9 }),
})

describe('the cutting diagram', () => {
  it('shows pieces end to end that add up to the length, each as wide as it is long, whatever is cut', () => {
    fc.assert(
      fc.property(
        fc.array(aLength, { minLength: 1, maxLength: 5 }),
        fc.integer({ min: 60, max: 400 }),
        (lengths, width) => {
          const bars = lengths.map(({ from, spare, parts }) => {
            const tenths = parts.reduce((sum, part) => sum + part + 40, from === 'merchant' ? 200 : 0) + spare
            return { from, length: tenths / 10, cuts: parts.map((part) => ({ length: part / 10 })) }
          })
          const diagram = cuttingDiagram(diagramOf({ bars }), width)
          const longest = Math.max(...bars.map(({ length }) => length))
          expect(diagram.scale * longest).toBeCloseTo(width - 2 * air, 9)
          bars.forEach((bar, place) => {
            const pieces = barPieces(bar, cutting)
            const tenths = (mm: number) => Math.round(mm * 10)
            expect(pieces.reduce((sum, { from, to }) => sum + tenths(to) - tenths(from), 0)).toBe(
              tenths(bar.length),
            )
            pieces.forEach((piece, next) => expect(piece.from).toBe(pieces[next - 1]?.to ?? 0))
            const parts = pieces.filter(({ kind }) => kind === 'part')
            expect(parts.map(({ from, to }) => tenths(to) - tenths(from))).toEqual(
              bar.cuts.map(({ length }) => tenths(length)),
            )
            const laid = diagram.bars[place]
            if (!laid) throw new Error('a length is missing')
            expect(laid.width).toBe(bar.length * diagram.scale)
            const shapes = laid.primitives.filter(
              (one) => one.kind === 'path' && one.points.some(([, y]) => y === air + barHeight),
            )
            expect(shapes.map(reachOf)).toEqual(
              pieces.map(({ from, to }) => [from * diagram.scale, to * diagram.scale]),
            )
          })
        },
      ),
      { numRuns: runs, seed },
    )
  })

  it('names each part by job and mark with its length, or by a number told in the legend', () => {
    const cuts = [
      { length: 1830, mark: '2026-014 board' },
      { length: 200, mark: '2026-015 filling piece over the door' },
      { length: 200, mark: '2026-015 filling piece over the door' },
      { length: 90, mark: '2026-014 block' },
    ]
    const bars = [{ from: 'rack', length: 2400, cuts } as const]
    const { bars: drawn, legend } = cuttingDiagram(diagramOf({ bars }), 240)
    expect(texts(drawn[0]?.primitives ?? [])).toEqual([
      '2026-014 board',
      '1830',
      '1',
      '200',
      '1',
      '200',
      '2',
      '90',
    ])
    expect(legend).toEqual([
      { number: 1, mark: '2026-015 filling piece over the door', length: 200 },
      { number: 2, mark: '2026-014 block', length: 90 },
    ])
  })

  it('writes every name or its number whatever the room, so that none is lost', () => {
    fc.assert(
      fc.property(fc.integer({ min: 60, max: 400 }), fc.integer({ min: 1, max: 12 }), (width, count) => {
        const marks = Array.from({ length: count }, (_, n) => `2026-014 part ${n + 1} with a longer name`)
        const bars = [
          { from: 'rack', length: 5000, cuts: marks.map((mark) => ({ length: 395, mark })) } as const,
        ]
        const { bars: drawn, legend } = cuttingDiagram(diagramOf({ bars }), width)
        const said = texts(drawn[0]?.primitives ?? [])
        for (const mark of marks) {
          const number = legend.find((one) => one.mark === mark)?.number
          expect(said.includes(mark) || said.includes(String(number))).toBe(true)
        }
      }),
      { numRuns: 60, seed },
    )
  })

  it('leaves the job’s number out only where the order is for one job and there is no room for it', () => {
    const cuts = [{ length: 700, mark: '2026-014 ledge' }]
    const bars = [{ from: 'rack', length: 5000, cuts } as const]
    const at = (width: number, numbers: string[]) =>
      texts(cuttingDiagram(diagramOf({ bars, numbers }), width).bars[0]?.primitives ?? [])[0]
    expect(at(300, ['2026-014'])).toBe('2026-014 ledge')
    expect(at(120, ['2026-014'])).toBe('ledge')
    expect(at(120, ['2026-014', '2026-015'])).toBe('1')
  })

  it('tells offcuts for the rack from waste by hatching and by words', () => {
    const bars = [
      { from: 'rack', length: 2000, cuts: [{ length: 1000, mark: '2026-014 a' }] },
      { from: 'rack', length: 1400, cuts: [{ length: 1000, mark: '2026-014 a' }] },
    ] as const
    const [kept, waste] = cuttingDiagram(diagramOf({ bars }), 250).bars
    expect(texts(kept?.primitives ?? [])).toEqual(['2026-014 a', '1000', 'to the rack', '996'])
    expect(texts(waste?.primitives ?? [])).toEqual(['2026-014 a', '1000', 'waste', '396'])
    const directions = (primitives: readonly Primitive[] = []) =>
      new Set(
        primitives.flatMap((one) =>
          one.kind === 'strokes'
            ? one.lines.map(([[x1, y1], [x2, y2]]) => Math.sign((x2 - x1) * (y2 - y1)))
            : [],
        ),
      ).size
    expect([directions(kept?.primitives), directions(waste?.primitives)]).toEqual([1, 2])
  })

  it('gives a job’s parts its own tint, by the longest number that their mark begins with', () => {
    const numbers = ['S-1', 'S-12', 'S-1 B']
    expect(jobOfMark('S-12 board', numbers)).toBe(1)
    expect(jobOfMark('S-1 board', numbers)).toBe(0)
    expect(jobOfMark('S-1 B board', numbers)).toBe(2)
    expect(jobOfMark('S-19 board', numbers)).toBe(-1)
  })
})

describe('two braces in one piece', () => {
  // 1531.5 twice, 120 wide, set 26.99475° off square, kerf 4: reach 120 · tan = 61.129, cut 4 / cos = 4.489, so 3006.4 and 56.6 of overlap.
  const pair: BracePair = {
    ...{ key: 'braces', mark: '2026-014 brace + brace', of: ['2026-014 brace', '2026-014 brace'] },
    ...{ lengths: [1531.5, 1531.5], length: 3006.4, saved: 60.6 },
  }
  const bars = [{ from: 'merchant', length: 3600, cuts: [{ length: 3006.4, mark: pair.mark }] } as const]

  it('are parted by a cut that slants as the saw will', () => {
    const { reach, cut } = slantOf(
      { marks: pair.of, lengths: pair.lengths },
      { long: 3006.4, kerf: 4, width: 120 },
    )
    expect(reach).toBeCloseTo(61.1, 1)
    expect(cut).toBeCloseTo(4.49, 2)
  })

  it('are drawn slanting, to scale, each named with its own length', () => {
    const { bars: drawn, scale } = cuttingDiagram(diagramOf({ bars, pairs: [pair], sectionWidth: 120 }), 300)
    const primitives = drawn[0]?.primitives ?? []
    expect(texts(primitives).filter((text) => text === '1531.5')).toHaveLength(2)
    const cut = primitives.find((one) => one.kind === 'path' && one.fill === 'ink')
    if (cut?.kind !== 'path') throw new Error('no cut is drawn')
    const at = (index: number) => (cut.points[index]?.[0] ?? 0) / scale
    expect(at(0)).toBeCloseTo(20 + 1531.5 - 61.09, 1)
    expect(at(3)).toBeCloseTo(20 + 1531.5, 6)
    expect(at(1) - at(0)).toBeCloseTo(4.49, 2)
    const last = primitives.findLast(
      (one) => one.kind === 'path' && one.fill !== 'paper' && one.fill !== 'ink',
    )
    if (!last) throw new Error('no brace is drawn')
    expect(reachOf(last)[1] / scale).toBeCloseTo(20 + 3006.4, 6)
  })

  it('are told in words too', () => {
    expect(barWords(bars[0] ?? { from: 'rack', length: 1, cuts: [] }, diagramOf({ pairs: [pair] }))).toBe(
      '3600 long: 2026-014 brace 1531.5 and 2026-014 brace 1531.5 parted on the slant; 569.6 back to the rack',
    )
  })
})
