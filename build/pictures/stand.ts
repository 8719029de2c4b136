import type { Page } from '@playwright/test'
import { ask, type State } from './state.ts'

/** Where the two books of the pictures are: one with the sample jobs, one that began without. */
export type Addresses = { sample: string; empty: string }

/** Opens a state's book on a fresh page and brings the screen to stand so; the first questions are answered unless they are the state. */
export async function stand(page: Page, state: State, { sample, empty }: Addresses): Promise<void> {
  await page.goto(state.empty ? empty : sample)
  if (!state.first) {
    const { value } = await ask<{ settings: { welcomed: boolean } }>(page, 'book.summary', {})
    if (!value.settings.welcomed) {
      await ask(page, 'settings.change', { welcomed: true })
      await page.reload()
    }
  }
  await state.open(page)
}
