import { describe, expect, it } from 'vitest'
import { flow, type Block } from '../../shared/papers/flow.ts'
import { plainMeasure } from '../../shared/papers/measure.ts'
import { paperDate } from '../../shared/papers/paperDate.ts'
import { fitWords, setLines } from '../../shared/papers/words.ts'

describe('setting lines', () => {
  const text = 'Square one end of each board, then cut it to length from the squared end.'

  it('keeps every word, in order, and no line wider than the measure', () => {
    const lines = setLines([{ text, weight: 'regular' }], { width: 40, size: 11, measure: plainMeasure })
    expect(lines.map((line) => line.map((piece) => piece.text).join('')).join(' ')).toBe(text)
    for (const line of lines)
      for (const piece of line)
        expect(piece.x + plainMeasure(piece.text, 11, 'regular')).toBeLessThanOrEqual(40 + 1e-9)
  })

  it('breaks a word that is longer than a line', () => {
    const lines = setLines([{ text: 'a'.repeat(60), weight: 'regular' }], {
      width: 20,
      size: 11,
      measure: plainMeasure,
    })
    expect(lines.length).toBeGreaterThan(3)
    expect(
      lines
        .flat()
        .map((piece) => piece.text)
        .join(''),
    ).toBe('a'.repeat(60))
  })

  it('sets a long name smaller, then cuts it with a mark that it was cut', () => {
    const fit = { width: 60, most: 16, least: 11, weight: 'semibold' as const }
    expect(fitWords('A. Customer', fit, plainMeasure)).toEqual({ text: 'A. Customer', size: 16 })
    const long = fitWords('The Very Long Named Allotment Gardens Society', fit, plainMeasure)
    expect(long.size).toBe(11)
    expect(long.text).toMatch(/^The Very Long .*…$/)
    expect(plainMeasure(long.text, 11, 'semibold')).toBeLessThanOrEqual(60)
  })
})

describe('flow', () => {
  const block = (height: number, withNext = false): Block => ({
    height,
    withNext,
    above: 2,
    marks: (x, y) => [{ kind: 'line', x1: x, y1: y, x2: x, y2: y + height, width: 0.2, ink: 'black' }],
  })
  const frame = { x: 12, top: 30, bottom: 130 }

  it('begins a page when the next block has no room, and a heading goes with what it heads', () => {
    const pages = flow([block(60), block(20), block(7, true), block(30)], frame, frame)
    expect(pages.map((marks) => marks.length)).toEqual([2, 2])
  })

  it('uses what the first page leaves free, and leaves it when nothing fits there', () => {
    expect(flow([block(20), block(90)], { ...frame, top: 100 }, frame).map((marks) => marks.length)).toEqual([
      1, 1,
    ])
    expect(flow([block(40)], { ...frame, top: 100 }, frame).map((marks) => marks.length)).toEqual([0, 1])
  })
})

describe('a day on a paper', () => {
  it('is written out', () => {
    expect(paperDate('2026-05-04')).toBe('4 May 2026')
    expect(paperDate('2026-12-31T23:59:59.000Z')).toBe('31 December 2026')
    expect(paperDate('soon')).toBe('soon')
  })
})
