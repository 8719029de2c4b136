import { describe, expect, it } from 'vitest'
import { markedParts, pieceAbout, soughtWords, unseenWords } from '../../shared/job/soughtWords.ts'

const marked = (text: string, search: string): string =>
  markedParts(text, soughtWords(search))
    .map(({ text: part, sought }) => (sought ? `[${part}]` : part))
    .join('')

describe('the words looked for', () => {
  it('leave small words out, unless nothing else was typed', () => {
    expect(soughtWords('the wide oak one in Marsh Lane')).toEqual(['wide', 'oak', 'marsh', 'lane'])
    expect(soughtWords('The one')).toEqual(['the', 'one'])
    expect(soughtWords(`Müller 5' 11"`)).toEqual(['muller', '5', '11'])
    expect(soughtWords('  " ')).toEqual([])
  })

  it('are marked where a word begins with one, accents and capitals aside, the longest that fits', () => {
    expect(marked('Zoé Müller-Ångström', 'mull ang zo')).toBe('[Zo]é [Müll]er-[Ång]ström')
    expect(marked('Salmarsh Lane', 'mar la lan')).toBe('Salmarsh [Lan]e')
    expect(marked('Zoe\u0301 e', 'zoe')).toBe('[Zoe\u0301] e')
    expect(marked('Side gate', '')).toBe('Side gate')
  })

  it('are unseen where no text has them; a word for a size stands for figures and is never unseen', () => {
    const words = soughtWords('the wide oak one in marsh lane')
    expect(unseenWords(words, ['Peg Sash', 'Marsh Lane', '985 × 1830 mm'])).toEqual(['oak'])
  })

  it('are shown with what stands about them, on one line of about seventy letters', () => {
    const notes = `Dog in the yard.\nHinges on the post that leans, by the old oak; key with the neighbour at number 4, who is in before nine.`
    const piece = pieceAbout(notes, ['oak'])
    expect(piece).toMatch(/^….*\boak\b.*…$/)
    expect(piece?.length).toBeLessThan(78)
    expect(pieceAbout(notes, ['dog'])).toMatch(/^Dog in the yard\. Hinges/)
    expect(pieceAbout(notes, ['larch'])).toBeUndefined()
  })
})
