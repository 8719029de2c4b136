import { describe, expect, it } from 'vitest'
import { fittingSheet } from '../../shared/papers/fittingSheet.ts'
import { toolsToBring } from '../../shared/papers/fitting/toolsToBring.ts'
import type { JobCardInput } from '../../shared/papers/jobCardInput.ts'
import { writeShortMm } from '../../shared/units/writeLength.ts'
import { wholeCards } from '../fixtures/wholeCards.ts'
import { allWords } from './pageBoxes.ts'
import { printedMeasure, readBack } from './paperReading.ts'

const gateOf = (start: string): JobCardInput => {
  const found = wholeCards.find(({ name }) => name.startsWith(start))
  if (!found) throw new Error(`no gate ${start}`)
  return found.input
}

const words = (input: JobCardInput): string => allWords(fittingSheet(input)).replace(/\s+/g, ' ')

describe('the fitting sheet of each of forty gates', () => {
  it.each(wholeCards)(
    '$name says what to bring, and has room to write and sign on its last page',
    ({ input }) => {
      const paper = fittingSheet(input)
      const said = words(input)
      expect(said).toContain('To bring')
      const last =
        paper.pages.at(-1)?.marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])) ?? []
      for (const part of ['As it was hung', 'gap, hanging side', 'Hung and tried by', 'Date'])
        expect(last).toContain(part)
    },
  )

  it.each(wholeCards)(
    '$name reads back with the hole of every bolt and where it comes',
    async ({ input }) => {
      const bolts = input.design.fittings.filter(({ kind, socket }) => kind === 'bolt' && socket !== null)
      const said = (await readBack(fittingSheet(input, printedMeasure))).flat().join(' ').replace(/\s+/g, ' ')
      if (bolts.length === 0) return expect(said).not.toContain('Bolt holes')
      for (const { leaf, side, shapes, socket } of bolts) {
        const rod = shapes.find(({ part }) => part === 'rod')?.outline ?? []
        const [xs, ys] = [rod.map(([x]) => x), rod.map(([, y]) => y)]
        const [x, y] = [(Math.min(...xs) + Math.max(...xs)) / 2, (Math.min(...ys) + Math.max(...ys)) / 2]
        const level = Math.max(...xs) - Math.min(...xs) > Math.max(...ys) - Math.min(...ys)
        const width = input.design.leaves.find(({ name }) => name === leaf)?.width ?? 0
        const from = side === 'closing' ? width - x : x
        const figure = Math.floor((level ? y : from) * 2 + 0.5) / 2
        expect(said).toContain(`${writeShortMm(socket ?? 0)} mm in the ${level ? 'post, ' : ''}`)
        expect(said).toContain(level ? `${figure} up from the foot` : `${figure} in from the`)
      }
    },
  )
})

describe('what to bring', () => {
  it('names the drills of the ironmongery, a masonry drill for sockets, spanners for bolts through the leaf', () => {
    const tools = toolsToBring(gateOf('24'))
    expect(tools).toContain('spanners')
    expect(tools.some((one) => /^drills [\d., ]+; driver bits$/.test(one))).toBe(true)
    expect(tools.some((one) => /^masonry drill \d+; eye protection$/.test(one))).toBe(true)
    expect(toolsToBring(gateOf('01'))).not.toContain('spanners')
  })

  it('gives the packers for the gaps that were allowed for, where the opening was measured', () => {
    const input = gateOf('29')
    const { size } = input.spec
    if (size.from !== 'opening') throw new Error('no opening')
    const gaps = [size.hangingGap, size.closingGap, size.groundGap].map((gap) => writeShortMm(gap)).join(', ')
    expect(toolsToBring(input)).toContain(`packers: ${gaps}`)
    expect(toolsToBring(gateOf('01'))).toContain('packers for the gaps')
  })

  it('asks for preservative where timber is treated', () => {
    const input = gateOf('01')
    const timbers = { [input.spec.boards.section.species]: { treated: true } }
    expect(toolsToBring({ ...input, spec: { ...input.spec, timbers } })).toContain(
      'preservative and brush, gloves',
    )
    expect(toolsToBring(input)).toContain('finish and brush for fresh cuts')
  })
})
