import type { Page } from '@playwright/test'
import { exampleSpec, openSpec } from './openSpec.ts'
import { entry, gateOf, startJob, type State } from './state.ts'

const gates = {
  heaviest: '24-framed-pair-bowed-heaviest',
  framed: '15-framed-bowed-notched',
  opening: '30-opening-lintel-pair',
  stable: '26-stable-door',
  raked: '11-raked-high-hanging',
  shed: '03-ledged-shed-door',
  ground: '31-foot-follows-rising',
  climate: '36-auto-gap-climate',
  own: '38-own-timber-one-foot',
}
type Gate = keyof typeof gates

async function example(page: Page, gate: Gate): Promise<void> {
  await startJob(page, { name: 'Isolde Hartwhistle', town: 'Lower Rebate', title: 'Yard gates' })
  await openSpec(page, exampleSpec(gates[gate]))
  await page.locator('[data-view="large"] svg').waitFor()
  await page.waitForTimeout(300)
}

/** Opens every fold of the form and shows the part of it that a share of the way down holds. */
async function unfolded(page: Page, share: number): Promise<void> {
  await page.locator('.gate-form').evaluate((form, down) => {
    form.querySelectorAll('details').forEach((one) => (one.open = true))
    form.scrollTo(0, (form.scrollHeight - form.clientHeight) * down)
  }, share)
}

const tab = async (page: Page, word: string): Promise<void> => {
  await page
    .getByRole('tablist', { name: 'Lists for the bench' })
    .getByRole('tab', { name: word, exact: true })
    .click()
  await page.locator('.bench').evaluate((bench) => bench.scrollTo(0, bench.scrollHeight))
}

/** The gate page with gates of every kind, the further entries open, the further lists shown. */
export const wholeGateStates: State[] = [
  ...Object.keys(gates).map((name) => ({
    name: `whole-${name}`,
    open: (page: Page) => example(page, name as Gate),
  })),
  ...[
    ['heaviest', 'Layers apart'],
    ['heaviest', 'Swing'],
    ['heaviest', 'Notch'],
    ['heaviest', 'Meeting edge'],
    ['heaviest', 'Rail section'],
    ['heaviest', 'Setting out'],
    ['ground', 'Ground'],
  ].map(([gate, view]) => ({
    name: `whole-view-${view?.toLowerCase().replaceAll(' ', '-')}`,
    open: async (page: Page) => {
      await example(page, gate as Gate)
      await page.getByRole('tablist', { name: 'Views of the gate' }).getByRole('tab', { name: view }).click()
    },
  })),
  ...[0, 0.2, 0.4, 0.6, 0.8, 1].map((share) => ({
    name: `whole-form-${share * 10}`,
    open: async (page: Page) => {
      await example(page, 'opening')
      await unfolded(page, share)
    },
  })),
  ...['Weight and swing', 'Movement', 'Rip list', 'Cut list', 'Setting out', 'Fittings'].map((word) => ({
    name: `whole-list-${word.toLowerCase().replaceAll(' ', '-')}`,
    open: async (page: Page) => {
      await example(page, word === 'Movement' ? 'climate' : 'heaviest')
      await tab(page, word)
    },
  })),
  {
    name: 'whole-ironmongery-overruled',
    open: async (page) => {
      await gateOf(page, '1400', '1900')
      await page.locator('section[aria-label="Ironmongery"] summary').click()
      await page.getByRole('button', { name: 'Propose hinges and lock' }).click()
      await page.waitForTimeout(300)
      await entry(page, 'ironmongery.0.heights').fill('700, 900')
      await page.waitForTimeout(500)
    },
  },
  {
    name: 'whole-timber',
    open: async (page) => {
      await gateOf(page, '985', '1830')
      await page.locator('section[aria-label="Timber"] summary').first().click()
      await entry(page, 'timbers.European redwood.density').fill('480')
      await page.locator('section[aria-label="Timber"]').evaluate((group) => group.scrollIntoView())
      await page.waitForTimeout(400)
    },
  },
  ...(['stainsIron', 'fixings'] as const).map((choice) => ({
    name: `whole-timber-${choice === 'fixings' ? 'metal-of-fixings' : 'staining'}`,
    open: async (page: Page) => {
      await gateOf(page, '985', '1830')
      await page.locator('section[aria-label="Timber"] summary').first().click()
      const chosen = entry(page, `timbers.European redwood.${choice}`)
      await chosen.evaluate((one) => one.scrollIntoView({ block: 'center' }))
      await chosen.click()
      await page
        .getByRole('option', { name: choice === 'fixings' ? /^stainless(?! preferred)/ : /^yes/ })
        .click()
      await page.waitForTimeout(500)
      // The list lies open over the choice that was made.
      await chosen.click()
      await page.getByRole('listbox').waitFor()
    },
  })),
  {
    name: 'whole-stopped',
    open: async (page) => {
      await gateOf(page, '985', '1830')
      await page.getByText('Leaves, top and opening').click()
      await page.getByText('bowed', { exact: true }).click()
      await entry(page, 'top.rise').fill('700')
      await page.waitForTimeout(500)
    },
  },
  {
    name: 'whole-opening-to-measure',
    open: async (page) => {
      await startJob(page, { name: 'Isolde Hartwhistle' })
      await page.getByText('the opening', { exact: true }).click()
      await entry(page, 'size.widths.0').fill('1004')
      await page.waitForTimeout(400)
    },
  },
]
