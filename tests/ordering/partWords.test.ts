import { describe, expect, it } from 'vitest'
import { partWords } from '../../shared/ordering/partWords.ts'

describe('a part told for a mark at the saw', () => {
  it.each([
    ['board', 'board'],
    ['board 3', 'board 3'],
    ['board 1, board 8', 'boards 1, 8'],
    ['board 1, board 2', 'boards 1, 2'],
    ['board 1, board 2, board 3, board 7', 'boards 1–3, 7'],
    ['lower brace, upper brace', 'lower brace, upper brace'],
    ['first leaf board 2, first leaf board 3, first leaf board 4', 'first leaf boards 2–4'],
    ['first leaf board 2, second leaf board 2', 'first leaf board 2, second leaf board 2'],
    ['bottom ledge, board 4, board 6', 'bottom ledge, boards 4, 6'],
  ])('%s is %s', (part, words) => {
    expect(partWords(part)).toBe(words)
  })

  it('is cut short where it stays longer than 80 characters', () => {
    const odd = Array.from({ length: 30 }, (_, place) => `second leaf board ${2 * place + 1}`).join(', ')
    expect(partWords(odd)).toHaveLength(80)
    expect(partWords(odd)).toMatch(/^second leaf boards 1, 3, 5, .*…$/)
  })
})
