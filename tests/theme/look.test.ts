import { readFileSync, readdirSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { inProject } from '../../build/paths.ts'
import { readLook, usualLook, wornBy } from '../../renderer/theme/look.ts'

const asked = { dark: false, moreContrast: false, coarse: false }

describe('how the screens look', () => {
  it('is as the computer asks until the person chooses', () => {
    expect(wornBy(usualLook, { dark: true, moreContrast: true, coarse: true })).toEqual({
      theme: 'dark',
      contrast: 'more',
      hand: 'fingers',
      letters: 16,
    })
    expect(wornBy(usualLook, asked)).toEqual({
      theme: 'light',
      contrast: 'usual',
      hand: 'mouse',
      letters: 16,
    })
  })

  it('is as the person chose, whatever the computer asks', () => {
    const chosen = { board: 'light', contrast: 'usual', hand: 'mouse', letters: 22 } as const
    expect(wornBy(chosen, { dark: true, moreContrast: true, coarse: true })).toEqual({
      theme: 'light',
      contrast: 'usual',
      hand: 'mouse',
      letters: 22,
    })
  })

  it('is read from what was kept; what isn’t understood there is as usual, and the one word kept earlier still counts', () => {
    expect(readLook('{"board":"dark","letters":18}')).toEqual({ ...usualLook, board: 'dark', letters: 18 })
    expect(readLook('{"board":"purple","letters":400,"hand":7}')).toEqual(usualLook)
    expect(readLook('not a look')).toEqual(usualLook)
    expect(readLook('null')).toEqual(usualLook)
    expect(readLook(null, 'dark')).toEqual({ ...usualLook, board: 'dark' })
    expect(readLook('{"board":"light"}', 'dark').board).toBe('light')
  })
})

/** The sources of the screens, the theme and what paints a picture or a paper apart: inks have colours of their own. */
const screens = readdirSync(inProject('renderer'), { recursive: true, encoding: 'utf8' })
  .filter((path) => /\.(vue|css|ts)$/.test(path) && !path.startsWith('theme/'))
  .filter((path) => !['pictures/lightPaper.ts', 'preview/openPaper.ts'].includes(path))

describe('colours and sizes of letters', () => {
  it('are named in the theme and nowhere in a screen', () => {
    expect(screens.length).toBeGreaterThan(150)
    const named = screens.flatMap((path) =>
      readFileSync(join(inProject('renderer'), path), 'utf8')
        .split('\n')
        .filter(
          (line) =>
            /#[0-9a-f]{3}(?:[0-9a-f]{3})?(?:[0-9a-f]{2})?\b(?!\/)|\b(?:rgb|hsl|oklch)a?\(/i.test(
              line.replace(/this\.#\w+|readonly #\w+|(['"`])#\/?[a-z]*/g, ''),
            ) || /font(?:-size)?:[^;]*\d(?:px|pt)/.test(line),
        )
        .map((line) => `${path}: ${line.trim()}`),
    )
    expect(named).toEqual([])
  })
})
