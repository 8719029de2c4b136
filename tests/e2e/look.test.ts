import type { Page } from '@playwright/test'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { exampleSpec, openSpec } from '../../build/pictures/openSpec.ts'
import { everySo } from '../fixtures/sample.ts'
import { faultsInBothLights } from './lookFaults.ts'
import { bench, entry, startJob, type Bench } from './onScreen.ts'

type Screen = { name: string; open: (page: Page) => Promise<void> }

const toJob = async (page: Page) => {
  await page.getByRole('link', { name: 'Jobs', exact: true }).click()
  await page.locator('a.line').filter({ hasText: 'Bevelstone' }).click()
  await page.locator('[data-view="large"] svg').waitFor()
}

/** One of the example gates on the screen, with every fold of its form open. */
const toExample = async (page: Page, name: string) => {
  await startJob(page, 'Isolde Hartwhistle')
  await openSpec(page, exampleSpec(name))
  await page.locator('[data-view="large"] svg').waitFor()
  await page.locator('.gate-form').evaluate((form) => {
    form.querySelectorAll('details').forEach((one) => (one.open = true))
  })
}

const lists = [
  'Rip list',
  'Holes',
  'Saws',
  'Setting out',
  'Fittings',
  'Weight and swing',
  'Movement',
  'Making',
]

const screens: Screen[] = [
  { name: 'framed pair, every entry open', open: (page) => toExample(page, '24-framed-pair-bowed-heaviest') },
  {
    name: 'opening with its survey, every entry open',
    open: (page) => toExample(page, '30-opening-lintel-pair'),
  },
  { name: 'stable door, every entry open', open: (page) => toExample(page, '26-stable-door') },
  { name: 'gap from the climate, every entry open', open: (page) => toExample(page, '36-auto-gap-climate') },
  {
    name: 'further view, large',
    open: async (page) => {
      await toExample(page, '24-framed-pair-bowed-heaviest')
      await page.getByRole('tab', { name: 'Layers apart' }).click()
      await page.locator('[data-shows="exploded"] svg').waitFor()
    },
  },
  ...lists.map((word) => ({
    name: `list: ${word.toLowerCase()}`,
    open: async (page: Page) => {
      await startJob(page, 'Isolde Hartwhistle')
      const name = word === 'Movement' ? '36-auto-gap-climate' : '24-framed-pair-bowed-heaviest'
      await openSpec(page, exampleSpec(name))
      await page
        .getByRole('tablist', { name: 'Lists for the bench' })
        .getByRole('tab', { name: word, exact: true })
        .click()
      await page.locator('.list-of[data-state="active"]').waitFor()
    },
  })),
  { name: 'jobs', open: (page) => page.locator('a.line').first().waitFor() },
  {
    name: 'new job',
    open: async (page) => {
      await page.getByRole('button', { name: 'Start a new job' }).click()
      await page.getByLabel('Customer', { exact: true }).waitFor()
    },
  },
  { name: 'gate', open: toJob },
  {
    name: 'gate with its checks open',
    open: async (page) => {
      await toJob(page)
      await page.locator('.checks .line').click()
      await page.locator('.checks li').first().waitFor()
    },
  },
  {
    name: 'gate not to be made',
    open: async (page) => {
      await startJob(page, 'Perpetua Sleeper')
      await entry(page, 'size.width').fill('60')
      await entry(page, 'size.height').fill('1800')
      await page.getByText(/made as entered/).waitFor()
    },
  },
  {
    name: 'papers',
    open: async (page) => {
      await toJob(page)
      await page.getByRole('link', { name: 'Papers' }).click()
      await page.getByRole('button', { name: /Issue card/ }).waitFor()
    },
  },
  {
    name: 'papers looked at',
    open: async (page) => {
      await toJob(page)
      await page.getByRole('link', { name: 'Papers' }).click()
      await page.getByRole('button', { name: 'Look at it first' }).click()
      await page.getByRole('heading', { name: 'Card, not issued' }).waitFor()
      await page.locator('canvas[data-painted]').waitFor()
      await page.getByRole('textbox', { name: 'Pages' }).fill('9')
      await page.getByText('There is no page 9').waitFor()
    },
  },
  {
    name: 'pictures',
    open: async (page) => {
      await toJob(page)
      await page.getByRole('link', { name: 'Papers' }).click()
      await page.getByRole('button', { name: 'Show the picture' }).click()
      await page.locator('canvas[data-picture]').waitFor()
    },
  },
  {
    name: 'cards of the week made',
    open: async (page) => {
      await page.getByRole('button', { name: 'Print this week’s cards' }).click()
      await page.getByRole('button', { name: /^Next week/ }).click()
      await page.getByRole('button', { name: /^Make/ }).click()
      await page.locator('canvas[data-painted]').waitFor()
    },
  },
  {
    name: 'customer',
    open: async (page) => {
      await toJob(page)
      await page.getByRole('link', { name: 'Customer', exact: true }).click()
      await entry(page, 'title').waitFor()
    },
  },
  {
    name: 'notes',
    open: async (page) => {
      await toJob(page)
      await page.getByRole('link', { name: 'Notes', exact: true }).click()
      await entry(page, 'note.words').fill('Ring before coming.')
      await page.getByRole('button', { name: 'Write it down' }).click()
      await page.locator('[data-happened]', { hasText: 'Ring before' }).waitFor()
    },
  },
  {
    name: 'workshop',
    open: async (page) => {
      await page.getByRole('link', { name: 'Workshop', exact: true }).click()
      await page.getByRole('heading', { name: 'Sections kept' }).waitFor()
    },
  },
]

/** Every fifth of them is looked at in the usual run; the sweep of every state takes them all. */
const looked = everySo(5, screens)

describe('every screen at 1093 × 614', () => {
  let desk: Bench
  beforeAll(async () => {
    desk = await bench({ empty: false })
  })
  afterAll(() => desk.clear())

  for (const screen of looked)
    it(`${screen.name}: light and dark, no serious fault for a screen reader or a weak eye, nothing runs off sideways`, async () => {
      const page = await desk.window()
      const refusals: string[] = []
      page.on('console', (message) => {
        if (/Content.Security.Policy/i.test(message.text())) refusals.push(message.text())
      })
      await screen.open(page)
      expect(await faultsInBothLights(page)).toEqual([])
      expect(refusals).toEqual([])
      await page.context().close()
    })

  it('would find a button without a name and letters too pale to read', async () => {
    const page = await desk.window()
    await page.evaluate(() => {
      const pale = document.createElement('p')
      pale.textContent = 'pale'
      Object.assign(pale.style, { color: '#999', background: '#aaa' })
      document.querySelector('main')?.prepend(document.createElement('button'), pale)
    })
    const found = (await faultsInBothLights(page)).map((fault) => fault.split(':').slice(0, 2).join(':'))
    expect(found.sort()).toEqual(['dark: color-contrast', 'light: button-name', 'light: color-contrast'])
    await page.context().close()
  })

  it('turns dark when the person chooses so on a light computer, and stays so', async () => {
    const page = await desk.window()
    await page.emulateMedia({ colorScheme: 'light' })
    await page.getByRole('link', { name: 'Workshop', exact: true }).click()
    const ground = () => page.evaluate(() => getComputedStyle(document.body).backgroundColor)
    const before = await ground()
    await page.getByText('dark', { exact: true }).click()
    await expect.poll(ground).not.toBe(before)
    const after = await ground()
    await page.reload()
    await page.getByRole('heading', { name: 'Sections kept' }).waitFor()
    await expect.poll(ground).toBe(after)
    await page.context().close()
  })

  it('sets sizes at a contrast of 7 to 1 or more, light and dark', async () => {
    const page = await desk.window()
    await toJob(page)
    for (const [colorScheme, contrast] of [
      ['light', 'no-preference'],
      ['dark', 'no-preference'],
      ['light', 'more'],
      ['dark', 'more'],
    ] as const) {
      await page.emulateMedia({ colorScheme, contrast })
      const ratios = await page.evaluate(() => {
        const channel = (value: number) =>
          value <= 0.03928 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4
        const luminance = (colour: string) => {
          const [r = 0, g = 0, b = 0] = (colour.match(/[\d.]+/g) ?? []).map((part) =>
            channel(Number(part) / 255),
          )
          return 0.2126 * r + 0.7152 * g + 0.0722 * b
        }
        const ground = (element: Element | null): string => {
          const own = element ? getComputedStyle(element).backgroundColor : 'rgb(255, 255, 255)'
          return element && /^rgba.*, 0\)$|transparent/.test(own) ? ground(element.parentElement) : own
        }
        return [
          ...document.querySelectorAll(
            '.shown, .also, .echo, .rows .figures, .rows .other, .gate-form input',
          ),
        ].map((element) => {
          const [a, b] = [luminance(getComputedStyle(element).color), luminance(ground(element))]
          return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05)
        })
      })
      expect(ratios.length).toBeGreaterThan(10)
      expect(Math.min(...ratios)).toBeGreaterThanOrEqual(7)
    }
    await page.context().close()
  })
})
