import type { State } from './state.ts'

/** The workshop's own settings. */
export const workshopStates: State[] = [
  { name: 'workshop', open: (page) => page.getByRole('link', { name: 'Workshop', exact: true }).click() },
  {
    name: 'workshop-foot',
    open: async (page) => {
      await page.getByRole('link', { name: 'Workshop', exact: true }).click()
      await page
        .getByRole('button', { name: /^Change/ })
        .first()
        .click()
      await page.locator('.workshop').evaluate((form) => form.scrollTo(0, form.scrollHeight))
    },
  },
  {
    name: 'workshop-keeping',
    open: async (page) => {
      await page.getByRole('link', { name: 'Workshop', exact: true }).click()
      await page.getByRole('button', { name: 'Make a copy now' }).click()
      await page
        .getByRole('button', { name: /^Look inside/ })
        .first()
        .click()
      await page.getByText('Open this copy').waitFor()
      await page.getByRole('heading', { name: 'Safe keeping' }).evaluate((line) => line.scrollIntoView())
    },
  },
  {
    name: 'workshop-sample-asked',
    open: async (page) => {
      await page.getByRole('link', { name: 'Workshop', exact: true }).click()
      await page.getByRole('button', { name: 'Take the sample jobs out' }).click()
      await page.waitForTimeout(200)
    },
  },
]
