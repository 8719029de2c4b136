import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { fileName } from '../../shared/papers/fileName.ts'

describe('the name something is kept under', () => {
  it.each([
    [['2026-007', 'Gate: ../side'], '2026-007 Gate side.png'],
    [['../../etc/passwd'], 'etc passwd.png'],
    [['C:\\Windows\\x'], 'C Windows x.png'],
    [['con'], 'gate con.png'],
    [['LPT1.txt'], 'gate LPT1.txt.png'],
    [['COM¹'], 'gate COM¹.png'],
    [['  ', '...'], 'gate.png'],
    [['gate\u202Egnp.exe'], 'gate gnp.exe.png'],
    [['a\u0000b\nc'], 'a b c.png'],
    [['Müller’s gate'], 'Müller’s gate.png'],
    [['M\u0075\u0308ller'], 'Müller.png'],
    [['🚪'.repeat(70)], `${'🚪'.repeat(60)}.png`],
  ])('of %j is %s', (words, name) => expect(fileName(words, 'png')).toBe(name))

  it('is never another folder’s, reserved, hidden, or longer than 60 letters, whatever the words', () => {
    fc.assert(
      fc.property(fc.array(fc.string({ unit: 'binary', maxLength: 200 }), { maxLength: 4 }), (words) => {
        const name = fileName(words, 'svg')
        const own = name.slice(0, -'.svg'.length)
        expect(name.endsWith('.svg')).toBe(true)
        expect([...own].length).toBeLessThanOrEqual(65)
        expect(own).not.toMatch(/[/\\:<>"|?*\p{Cc}\p{Cf}\p{Cs}]|^[.\s]|[.\s]$|\.\./u)
        expect(own).not.toMatch(/^(con|prn|aux|nul|com[0-9¹²³]|lpt[0-9¹²³])(\..*)?$/i)
        expect(own.length).toBeGreaterThan(0)
      }),
      { numRuns: 2000, seed: 606 },
    )
  })
})
