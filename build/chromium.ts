import { chromium, type Browser } from '@playwright/test'
import { chromiumPath } from './machine.ts'

/** A Chromium that asks nothing of the machine or the network by itself. */
export const quietFlags = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
]

/** Starts the machine's Chromium for pictures, benches and tests. Rejects where there is none. */
export async function startChromium(more: readonly string[] = []): Promise<Browser> {
  const executablePath = chromiumPath()
  if (executablePath === undefined)
    throw new Error(
      'There is no Chromium here: run "npm test" once as root, or set BRACEWORK_CHROMIUM to one.',
    )
  return chromium.launch({ executablePath, args: [...quietFlags, ...more] })
}
