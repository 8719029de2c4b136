import type { Page } from '@playwright/test'
import { expect } from 'vitest'

/** A person at the keyboard who has no mouse, and counts what is pressed. */
export type KeyHand = {
  page: Page
  count: () => number
  press: (chord: string) => Promise<void>
  type: (words: string) => Promise<void>
  /** The list of what can be done, a few words of it, and the first line that they find: three actions. */
  ask: (words: string, finds: string | RegExp) => Promise<void>
  /** Looks where the hand is. No action. */
  held: (selector: string) => Promise<void>
}

/** Whether what has the hand is one of these. */
const holds = (page: Page, selector: string): Promise<boolean> =>
  page.evaluate((one) => document.activeElement?.matches(one) ?? false, selector)

/** Takes the keyboard of a page in hand, at nought. */
export function keyHand(page: Page): KeyHand {
  let done = 0
  const press = async (chord: string) => {
    done += 1
    await page.keyboard.press(chord)
  }
  const type = async (words: string) => {
    done += 1
    await page.keyboard.type(words)
  }
  const held = (selector: string) => expect.poll(() => holds(page, selector)).toBe(true)
  const ask = async (words: string, finds: string | RegExp) => {
    await press('F2')
    await held('dialog[open] input')
    await type(words)
    await page.locator('#command-0').filter({ hasText: finds }).waitFor()
    await press('Enter')
  }
  return { page, count: () => done, press, type, ask, held }
}
