import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from '@playwright/test'
import type { Gives, RequestName, Takes } from '../../shared/contract.ts'
import { hosted } from '../../build/hosted.ts'
import { ask } from './timberBook.ts'
import { startChromium } from '../../build/chromium.ts'

/** What the book answers to a request, over the page's own carrier. */
export const told = async <N extends RequestName>(
  page: Page,
  name: N,
  payload: Takes<N>,
): Promise<Gives<N>> => (await ask(page, name, payload)) as Gives<N>

/** A workshop's book with the sample in it, beside it another disk as a memory stick is, and windows for keys or for fingers. */
export type TaskDesk = {
  stick: string
  window: (worked: { byFingers: boolean }) => Promise<Page>
  clear: () => Promise<void>
}

/** The print window can't be opened without a screen: what it is handed is noted at its door. */
const notePrinting = () =>
  Object.defineProperty(HTMLIFrameElement.prototype, 'contentWindow', {
    get() {
      return {
        focus: () => undefined,
        print: () => (document.body.dataset['printed'] = this.dataset.sha256),
      }
    },
  })

/** Starts the book's host and a browser. Everything is thrown away by `clear`. */
export async function taskDesk(): Promise<TaskDesk> {
  const folder = mkdtempSync(join(tmpdir(), 'bracework-tasks-'))
  const stick = mkdtempSync('/dev/shm/STICK-')
  const host = await hosted(join(folder, 'workshop.book'))
  const browser = await startChromium()
  const window = async ({ byFingers }: { byFingers: boolean }) => {
    const viewport = { width: 1093, height: 614 }
    const context = await browser.newContext({ viewport, hasTouch: byFingers })
    const page = await context.newPage()
    await page.addInitScript(notePrinting)
    await page.goto(host.address)
    await told(page, 'settings.change', { name: 'Test Bench Joinery', welcomed: true })
    return page
  }
  const clear = async () => {
    await browser.close()
    await host.stop()
    for (const gone of [folder, stick]) rmSync(gone, { recursive: true, force: true })
  }
  return { stick, window, clear }
}
