import { chromium, type Browser } from '@playwright/test'
import { chromiumPath } from '../machine.ts'

const flags = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
]

/** Runs work in a Chromium that is closed again whatever happens; also how long its start took, ms. */
export async function inChromium<T>(work: (browser: Browser, startMs: number) => Promise<T>): Promise<T> {
  const executablePath = chromiumPath()
  if (executablePath === undefined)
    throw new Error('The bench measures beside a Chromium, and there is none here.')
  const start = performance.now()
  const browser = await chromium.launch({ executablePath, args: flags })
  try {
    return await work(browser, performance.now() - start)
  } finally {
    await browser.close()
  }
}
