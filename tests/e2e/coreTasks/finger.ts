import type { Locator, Page } from '@playwright/test'
import { expect } from 'vitest'

/** What a finger in a glove can hit, px. */
const fingertip = 44

/** A person with a finger on the glass and the screen's own keys for words, who counts what is done. */
export type Finger = {
  page: Page
  count: () => number
  tap: (target: Locator) => Promise<void>
  type: (words: string) => Promise<void>
  /** The return key of the screen's own keyboard. */
  enter: () => Promise<void>
  /** The list of what can be done, a few words of it, and a tap on the first line found: three actions. */
  ask: (words: string, finds: string | RegExp) => Promise<void>
}

type Box = { x: number; y: number; width: number; height: number }

async function boxOf(target: Locator): Promise<Box> {
  await target.waitFor()
  const box = await target.boundingBox()
  if (!box) throw new Error(`nothing to press: ${String(target)}`)
  return box
}

type Spot = { x: number; y: number }
const middleOf = ({ x, y, width, height }: Box): Spot => ({ x: x + width / 2, y: y + height / 2 })

/** Whether a finger at that spot reaches the target, and nothing that lies over it. */
const reaches = (target: Locator, spot: Spot): Promise<boolean> =>
  target.evaluate((element, { x, y }) => {
    const hit = document.elementFromPoint(x, y)
    return hit !== null && (element.contains(hit) || hit.contains(element))
  }, spot)

/** One finger down, along and up again; it rests before it is lifted, so that nothing runs on. */
async function swipe(page: Page, from: Spot, far: number): Promise<void> {
  const glass = await page.context().newCDPSession(page)
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', touchPoints: Spot[]) =>
    glass.send('Input.dispatchTouchEvent', { type, touchPoints })
  await touch('touchStart', [from])
  for (const share of [0.25, 0.5, 0.75, 1, 1, 1]) {
    await touch('touchMove', [{ x: from.x, y: from.y + far * share }])
    await page.waitForTimeout(20)
  }
  await touch('touchEnd', [])
  await glass.detach()
  await page.waitForTimeout(60)
}

/** Draws what the target lies on along under the finger, until the target lies free; how many swipes that took. */
async function swipeTo(page: Page, target: Locator): Promise<number> {
  const high = page.viewportSize()?.height ?? 0
  const [upper, lower] = [high * 0.5, high * 0.92]
  for (let swipes = 0; swipes < 6; swipes += 1) {
    const spot = middleOf(await boxOf(target))
    if (await reaches(target, spot)) return swipes
    const down = spot.y < upper
    const far = Math.max(upper - lower, Math.min(lower - upper, high * 0.65 - spot.y))
    await swipe(page, { x: spot.x, y: down ? upper : lower }, far)
  }
  throw new Error(`no finger gets at ${String(target)}`)
}

/** Takes the glass of a page in hand, at nought. */
export function finger(page: Page): Finger {
  let done = 0
  const tap = async (target: Locator) => {
    done += (await swipeTo(page, target)) + 1
    const box = await boxOf(target)
    const middle = middleOf(box)
    expect(Math.min(box.width, box.height), `${String(target)} under a finger`).toBeGreaterThanOrEqual(
      fingertip,
    )
    await page.touchscreen.tap(middle.x, middle.y)
  }
  const type = async (words: string) => {
    done += 1
    await page.keyboard.type(words)
  }
  const enter = async () => {
    done += 1
    await page.keyboard.press('Enter')
  }
  const ask = async (words: string, finds: string | RegExp) => {
    await tap(page.getByRole('button', { name: 'Do…' }))
    await page.locator('dialog[open] input:focus').waitFor()
    await type(words)
    const line = page.locator('#command-0').filter({ hasText: finds })
    await line.waitFor()
    await tap(line)
  }
  return { page, count: () => done, tap, type, enter, ask }
}
