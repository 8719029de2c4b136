import type { Page } from '@playwright/test'

/** A way the screens may look: by what the computer asks for, or as the person chose. */
export type Worn = {
  name: string
  colorScheme: 'light' | 'dark'
  contrast?: 'more'
  forcedColors?: 'active'
  letters?: number
  hand?: 'fingers'
}

/** The looks that are pictured and swept, the two usual ones first. */
export const looks: readonly Worn[] = [
  { name: 'light', colorScheme: 'light' },
  { name: 'dark', colorScheme: 'dark' },
  { name: 'strong', colorScheme: 'light', contrast: 'more' },
  { name: 'strong-dark', colorScheme: 'dark', contrast: 'more' },
  { name: 'forced', colorScheme: 'dark', forcedColors: 'active' },
  { name: 'fingers', colorScheme: 'light', hand: 'fingers' },
  { name: 'largest', colorScheme: 'light', letters: 22 },
]

/** Gives an open page a look, as the computer's settings and the person's choice would, without opening it anew. */
export async function wears(page: Page, look: Worn): Promise<void> {
  await page.emulateMedia({
    colorScheme: look.colorScheme,
    contrast: look.contrast ?? 'no-preference',
    forcedColors: look.forcedColors ?? 'none',
    reducedMotion: 'reduce',
  })
  await page.evaluate(
    ([letters, hand]) => {
      const key = 'bracework.look'
      window.localStorage.setItem(key, JSON.stringify({ letters, hand }))
      window.dispatchEvent(new StorageEvent('storage', { key }))
    },
    [look.letters ?? 16, look.hand ?? 'mouse'] as const,
  )
}
