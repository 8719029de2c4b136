import { describe, expect, it } from 'vitest'
import { lookUp } from '../../shared/language/lookUp.ts'
import { noteOwnWords, ownWords } from '../../shared/language/ownWords.ts'

/** Invented: the words of a joiner who speaks a little German. */
const messages = {
  Gate: 'Tor',
  boards: 'Bretter',
  'worth knowing': 'wissenswert',
  'the ledge': 'die Leiste',
  'a metre': 'je Meter',
  '{0} of {1} are cut': 'von {1} sind {0} geschnitten',
  'The {0} stands at {1}°; at least {2}° is sound.': 'Bei {1}° steht {0}; ab {2}° ist es gut.',
  '{0} worth knowing': '{0} wissenswert',
  'brace foot': 'Strebenfuß',
  'Nothing in the way': 'Nichts im Weg',
  two: 'zwei',
}

const speaking = (...written: string[]) => {
  const own = ownWords()
  written.forEach(own.add)
  return { own, ...lookUp({ messages, locale: 'de-DE' }, own) }
}

describe('a text in another language', () => {
  const { sentence, message } = speaking()

  it.each([
    ['Gate', 'Tor'],
    ['gate', 'tor'],
    ['Boards', 'Bretter'],
    ['  boards: ', '  Bretter: '],
    ['3 of 7 are cut', 'von 7 sind 3 geschnitten'],
    [
      'The brace foot stands at 41.5°; at least 45° is sound.',
      'Bei 41,5° steht Strebenfuß; ab 45° ist es gut.',
    ],
    ['Nothing in the way, two worth knowing', 'Nichts im Weg, zwei wissenswert'],
    ['£4.43 a metre', '4,43\u00a0£ je Meter'],
    ['12 boards', '12 Bretter'],
    ['Something nobody translated', 'Something nobody translated'],
  ])('“%s” is “%s”', (text, told) => {
    expect(sentence(text)).toBe(told)
  })

  it('puts values where the language wants them, and looks them up too', () => {
    expect(message('{0} of {1} are cut', ['two', '9'])).toBe('von 9 sind zwei geschnitten')
    expect(message(' Cut {0} now, ', ['the ledge'])).toBe(' Cut die Leiste now, ')
  })
})

describe('what a person wrote', () => {
  it('stays, even where one of our messages reads the same', () => {
    const { sentence, message } = speaking('Gate', 'The brace foot stands at 9°; at least 8° is sound.')
    expect(sentence('Gate')).toBe('Gate')
    expect(sentence('Gate, two worth knowing')).toBe('Gate, zwei wissenswert')
    expect(message('{0} of {1} are cut', ['Gate', 'boards'])).toBe('von Bretter sind Gate geschnitten')
    expect(sentence('The brace foot stands at 9°; at least 8° is sound.')).toBe(
      'The brace foot stands at 9°; at least 8° is sound.',
    )
  })

  it('stays once the book has told it, though it was taken for ours before', () => {
    const { own, sentence } = speaking()
    expect(sentence('Gate')).toBe('Tor')
    noteOwnWords(
      { jobs: [{ title: 'Gate', stage: 'two', customer: { name: 'A. Sash', town: 'boards' } }] },
      own,
    )
    expect([sentence('Gate'), sentence('boards'), sentence('two')]).toEqual(['Gate', 'boards', 'zwei'])
  })
})
