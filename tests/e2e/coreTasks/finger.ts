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

/** Draws the sheet under the target along by a swipe, until the target stands in the window. */
async function swipeTo(page: Page, target: Locator): Promise<number> {
  const high = page.viewportSize()?.height ?? 0
  const glass = await page.context().newCDPSession(page)
  let swipes = 0
  for (; swipes < 6; swipes += 1) {
    const { x, y, width, height } = await boxOf(target)
    if (y >= 0 && y + height <= high) break
    const way = y < 0 ? 1 : -1
    await glass.send('Input.synthesizeScrollGesture', {
      ...{ x: Math.round(x + width / 2), y: Math.round(high / 2) },
      ...{ yDistance: way * Math.round(high * 0.6), speed: 6000, gestureSourceType: 'touch' },
    })
  }
  await glass.detach()
  return swipes
}

/** Whether a finger at that point reaches the target, and nothing that lies over it. */
const reaches = (target: Locator, x: number, y: number): Promise<boolean> =>
  target.evaluate(
    (element, [left = 0, top = 0]) => {
      const hit = document.elementFromPoint(left, top)
      return hit !== null && (element.contains(hit) || hit.contains(element))
    },
    [x, y],
  )

/** Takes the glass of a page in hand, at nought. */
export function finger(page: Page): Finger {
  let done = 0
  const tap = async (target: Locator) => {
    done += (await swipeTo(page, target)) + 1
    const box = await boxOf(target)
    const middle = { x: box.x + box.width / 2, y: box.y + box.height / 2 }
    expect(Math.min(box.width, box.height), `${String(target)} under a finger`).toBeGreaterThanOrEqual(
      fingertip,
    )
    expect(await reaches(target, middle.x, middle.y), `${String(target)} lies free`).toBe(true)
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
