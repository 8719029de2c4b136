import type { Browser } from '@playwright/test'
import { startChromium } from '../chromium.ts'

/** Runs work in a Chromium that is closed again whatever happens; also how long its start took, ms. */
export async function inChromium<T>(work: (browser: Browser, startMs: number) => Promise<T>): Promise<T> {
  const start = performance.now()
  const browser = await startChromium()
  try {
    return await work(browser, performance.now() - start)
  } finally {
    await browser.close()
  }
}
