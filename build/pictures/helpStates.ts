import { gateOf, type State } from './state.ts'

/** The first questions: of a book that nobody has begun with, so before every other state. */
export const firstStates: State[] = [
  { name: 'first-run', first: true, open: (page) => page.getByText('Three things first').waitFor() },
  {
    name: 'first-run-empty',
    ...{ empty: true, first: true },
    open: (page) => page.getByText('Three things first').waitFor(),
  },
]

/** Help beside a screen, the list of what can be done. */
export const helpStates: State[] = [
  {
    name: 'help-field',
    open: async (page) => {
      await gateOf(page, '985', '1830')
      await page.locator('[data-field="size.width"]').focus()
      await page.keyboard.press('F1')
      await page.locator('.help article').waitFor()
    },
  },
  {
    name: 'help-list',
    open: async (page) => {
      await page.keyboard.press('F1')
      await page.locator('.help article').waitFor()
      await page.getByPlaceholder('Look for a word').fill('timber')
    },
  },
  {
    name: 'help-brace',
    open: async (page) => {
      await page.keyboard.press('F1')
      await page.getByPlaceholder('Look for a word').fill('brace')
      await page.locator('.pick').first().click()
      await page.locator('.picture').waitFor()
    },
  },
  {
    name: 'do',
    open: async (page) => {
      await page.keyboard.press('F2')
      await page.getByRole('combobox').fill('pr')
      await page.waitForTimeout(400)
    },
  },
]
