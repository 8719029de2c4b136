import { afterEach, describe, expect, it } from 'vitest'
import { readDay } from '../../renderer/day.ts'
import { writeDay, writeTime } from '../../renderer/format.ts'
import { spoken } from '../../renderer/language/said.ts'
import { americanWords, inAmerican } from '../../shared/language/americanWords.ts'
import { figuresIn } from '../../shared/language/figuresIn.ts'

const space = /[\u00a0\u202f]/g

describe('figures of a sentence, by place (CLDR, as Node’s Intl has it)', () => {
  it.each([
    ['fr-FR', '£1,234.50 for 1803.4 mm', '1 234,50 £ for 1803,4 mm'],
    ['de-DE', '−€5.00, 12,345 lines', '-5,00 €, 12.345 lines'],
    ['fr-FR', 'issued 3 May 2026', 'issued 3 mai 2026'],
    ['en-US', 'issued 3 May 2026, £1,234.50', 'issued May 3, 2026, £1,234.50'],
    ['de-DE', 'EN 1995-1-1 table 6.1, 5.10.2', 'EN 1995-1-1 table 6.1, 5.10.2'],
    ['de-DE', 'Table 13-5 and §12.2', 'Table 13-5 and §12.2'],
    ['en-GB', 'issued 3 May 2026, £1,234.50', 'issued 3 May 2026, £1,234.50'],
  ])('%s: %s', (locale, text, told) => {
    expect(figuresIn(locale)(text).replace(space, ' ')).toBe(told)
  })
})

describe('days on the screen, by place', () => {
  afterEach(() => {
    spoken.locale = 'en-GB'
  })
  const today = new Date(2026, 4, 20)
  const read = (text: string) => {
    const day = readDay(text, today)
    return day.kind === 'day' ? day.iso : day.kind
  }

  it.each([
    ['en-GB', '3/6/26', '2026-06-03'],
    ['en-US', '3/6/26', '2026-03-06'],
    ['en-US', 'June 3', '2026-06-03'],
    ['en-US', '3 June', '2026-06-03'],
    ['fr-FR', '3 août 2026', '2026-08-03'],
    ['de-DE', '3. März 2027', '2027-03-03'],
    ['de-DE', '3.6.26', '2026-06-03'],
  ])('%s: “%s” is %s', (locale, text, iso) => {
    spoken.locale = locale
    expect(read(text)).toBe(iso)
  })

  it.each(['en-GB', 'en-US', 'fr-FR', 'de-DE', 'es-ES', 'it-IT', 'nl-NL', 'pl-PL', 'pt-PT', 'sv-SE'])(
    '%s: each month is read back as it is written',
    (locale) => {
      spoken.locale = locale
      for (let month = 1; month <= 12; month += 1) {
        const iso = `2026-${String(month).padStart(2, '0')}-17`
        expect([locale, writeDay(iso), read(writeDay(iso))]).toEqual([locale, writeDay(iso), iso])
      }
    },
  )

  it('has the clock as the place has it', () => {
    const at = new Date(2026, 4, 20, 14, 2).toISOString()
    expect(writeTime(at)).toBe('14:02')
    spoken.locale = 'en-US'
    expect(writeTime(at).replace(space, ' ')).toBe('02:02 PM')
  })
})

describe('American words (common practice and from memory)', () => {
  it.each([
    ['Ledges and timber', 'Battens and lumber'],
    ['TIMBER order', 'LUMBER order'],
    ['a coach bolt through the ledge, grey', 'a carriage bolt through the batten, gray'],
    ['£4.43 a metre, VAT {0}', '£4.43 a meter, sales tax {0}'],
    ['Knowledge of ledgers', 'Knowledge of ledgers'],
    ['planed timber’s colour', 'surfaced lumber’s color'],
    ['the ledges’ ends', 'the battens’ ends'],
  ])('“%s” is “%s”', (british, american) => {
    expect(inAmerican(british)).toBe(american)
  })

  it('name each British word once, in small letters but for names', () => {
    const british = americanWords.map(([word]) => word)
    expect(new Set(british).size).toBe(british.length)
    expect(british.filter((word) => word !== word.toLowerCase())).toEqual(['VAT'])
  })

  it('keep every gap of a message', () => {
    expect(inAmerican('{0} ledges of {1}')).toBe('{0} battens of {1}')
  })
})
