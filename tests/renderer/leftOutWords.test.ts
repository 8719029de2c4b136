import { describe, expect, it } from 'vitest'
import { leftOutWords } from '../../renderer/timber/planWords.ts'

const long = (mm: number): string => `${mm} mm`
const tooLong = {
  ...{ part: 'board', number: '2026-015', length: 2324.5, longest: 2080, of: 2100 },
  ...{ from: 'merchant' as const, trim: 20 },
}

describe('why timber is left out of an order', () => {
  it('names the blank that no length holds, the longest to be had, what was trimmed and what is lacking', () => {
    expect(leftOutWords({ why: 'no length', tooLong }, long)).toBe(
      'isn’t kept long enough: add a longer length in the price book. The board of 2026-015 takes 2324.5 mm; the longest to be had is 2080 mm (a length of 2100 mm less 20 mm trimmed off its ends; the last saw cut meets its end), 244.5 mm too short',
    )
  })

  it('says so of a piece on the rack, which loses nothing at its ends', () => {
    const onRack = { ...tooLong, longest: 2300, of: 2300, from: 'rack' as const, trim: 0 }
    expect(leftOutWords({ why: 'no length', tooLong: onRack }, long)).toContain(
      'the longest to be had is 2300 mm (a piece on the rack; the last saw cut meets its end), 24.5 mm too short',
    )
  })

  it('is short where it isn’t about a length', () => {
    expect(leftOutWords({ why: 'no price', tooLong: null }, long)).toBe(
      'has no price: put one down in the price book',
    )
  })
})
