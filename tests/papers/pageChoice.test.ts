import { describe, expect, it } from 'vitest'
import { pageChoice } from '../../shared/papers/pageChoice.ts'

const chosen = (text: string, pages: number) => {
  const read = pageChoice(text, pages)
  return read.ok ? read.value : read.problems.map(({ message }) => message)
}

describe('pages chosen to print', () => {
  it.each([
    ['', [1, 2, 3, 4, 5, 6]],
    ['all', [1, 2, 3, 4, 5, 6]],
    ['1, 3–4', [1, 3, 4]],
    ['1,3-4', [1, 3, 4]],
    ['4 to 6', [4, 5, 6]],
    ['5; 2 and 2', [2, 5]],
    ['3—5, 4', [3, 4, 5]],
    [' 6 ,', [6]],
  ])('“%s” of six', (text, pages) => expect(chosen(text, 6)).toEqual(pages))

  it.each([
    ['7', 'there is no page 7; this paper has pages 1 to 6'],
    ['0', 'there is no page 0; this paper has pages 1 to 6'],
    ['2-9', 'there is no page 9; this paper has pages 1 to 6'],
    ['4-3', '4–3 runs backwards; write 3–4'],
    ['x', '‘x’ can’t be read as pages; write them like 1, 3–4, or leave it empty for all'],
    ['1.5', '‘1.5’ can’t be read as pages; write them like 1, 3–4, or leave it empty for all'],
    ['-2', '‘-2’ can’t be read as pages; write them like 1, 3–4, or leave it empty for all'],
    [',', 'no page is chosen; write pages like 1, 3–4, or leave it empty for all'],
    ['1-999999', 'there is no page 999999; this paper has pages 1 to 6'],
  ])('“%s” says what is wrong', (text, message) => expect(chosen(text, 6)).toEqual([message]))

  it('of a paper with one page says so', () =>
    expect(chosen('2', 1)).toEqual(['there is no page 2; this paper has one page']))
})
