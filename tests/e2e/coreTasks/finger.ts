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

/** Draws what the target lies on along under the finger, until the target lies free; how many swipes that took. */
async function swipeTo(page: Page, target: Locator): Promise<number> {
  const high = page.viewportSize()?.height ?? 0
  const most = Math.round(high * 0.5)
  for (let swipes = 0; swipes < 6; swipes += 1) {
    const spot = middleOf(await boxOf(target))
    if (await reaches(target, spot)) return swipes
    const away = Math.round(high * 0.6 - spot.y)
    const glass = await page.context().newCDPSession(page)
    await glass.send('Input.synthesizeScrollGesture', {
      ...{ x: Math.round(spot.x), y: Math.round(high * 0.6) },
      ...{ yDistance: Math.max(-most, Math.min(most, away)), speed: 4000, gestureSourceType: 'touch' },
    })
    await glass.detach()
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
