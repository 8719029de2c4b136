import { mkdirSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { chromium, type Page } from '@playwright/test'
import { hosted } from './hosted.ts'
import { inProject } from './paths.ts'

/**
 * Pictures of every screen in every state, at a small laptop's size and a large screen's, light and dark, to build/out/pictures:
 * for looking at one by one. Needs a built renderer. With words after it, only states whose name holds one of them.
 */
type State = { name: string; empty?: boolean; open: (page: Page) => Promise<void> }

const sizes = [
  { name: 'laptop', width: 1093, height: 614 },
  { name: 'large', width: 1920, height: 1080 },
]
const lights = ['light', 'dark'] as const

const entry = (page: Page, field: string) => page.locator(`[data-field="${field}"]`)

async function startJob(page: Page, given: { name: string; town?: string; title?: string }): Promise<void> {
  await page.getByRole('link', { name: 'Jobs', exact: true }).click()
  await page.getByRole('button', { name: 'Start a new job' }).click()
  await page.getByLabel('Customer', { exact: true }).fill(given.name)
  await page.getByLabel('Town').fill(given.town ?? '')
  await page.getByLabel('What is it?').fill(given.title ?? '')
  await page.getByRole('button', { name: 'Start the job' }).click()
  await entry(page, 'size.width').waitFor()
}

async function gateOf(page: Page, width: string, height: string): Promise<void> {
  await startJob(page, {
    name: 'Isolde Hartwhistle',
    town: 'Lower Rebate',
    title: 'Side gate, by the water butt',
  })
  await entry(page, 'size.width').fill(width)
  await entry(page, 'size.height').fill(height)
  await page.waitForTimeout(500)
}

async function issued(page: Page): Promise<void> {
  await gateOf(page, '985', '1830')
  await page.getByRole('link', { name: 'Papers' }).click()
  await page.getByRole('button', { name: 'Issue card 1' }).click()
  await page.getByRole('button', { name: 'Issue card 2' }).waitFor()
}

const long = {
  name: 'The Worshipful Guardians of the Almshouses of Nether Shaving and Upper Shaving with Little Arris',
  town: 'Saint-Germain-des-Charpentiers-sur-Loire',
  title: 'Portillon du potager, côté rivière, à assortir avec la grande porte cochère de l’entrée principale',
}

const states: State[] = [
  { name: 'jobs-empty', empty: true, open: (page) => page.getByText('The book is empty').waitFor() },
  { name: 'jobs', open: (page) => page.locator('a.line').first().waitFor() },
  {
    name: 'jobs-none-found',
    open: async (page) => {
      await page.getByLabel('Search the jobs').fill('nobody of that name')
      await page.getByText('No job like that').waitFor()
    },
  },
  {
    name: 'jobs-new',
    open: async (page) => {
      await page.getByRole('button', { name: 'Start a new job' }).click()
      await page.getByLabel('Customer', { exact: true }).fill('Be')
      await page.getByLabel('Promised for').fill('in 2 weeks')
      await page.waitForTimeout(300)
    },
  },
  {
    name: 'jobs-long-names',
    open: async (page) => {
      await startJob(page, long)
      await page.getByRole('link', { name: 'Jobs', exact: true }).click()
      await page.locator('a.line').first().waitFor()
    },
  },
  { name: 'gate-nothing-filled-in', open: (page) => startJob(page, { name: 'Isolde Hartwhistle' }) },
  { name: 'gate', open: (page) => gateOf(page, '985', '1830') },
  {
    name: 'gate-lit',
    open: async (page) => {
      await gateOf(page, '985', '1830')
      await page.getByRole('row', { name: /Ledge/ }).hover()
    },
  },
  {
    name: 'gate-inches',
    open: async (page) => {
      await gateOf(page, '38 7/8"', '5\' 11"')
      await page.getByText('inches', { exact: true }).first().click()
      await page.waitForTimeout(500)
    },
  },
  { name: 'gate-stopped', open: (page) => gateOf(page, '60', '1830') },
  { name: 'gate-asked', open: (page) => gateOf(page, '985', '1,830') },
  { name: 'gate-not-understood', open: (page) => gateOf(page, 'about a yard', '1830') },
  {
    name: 'gate-one-foot',
    open: async (page) => {
      await page.locator('a.line').filter({ hasText: 'Hatch for the hen run' }).click()
      await page.locator('[data-view="large"] svg').waitFor()
    },
  },
  { name: 'gate-eight-foot', open: (page) => gateOf(page, '2438', '1200') },
  { name: 'gate-eight-foot-high', open: (page) => gateOf(page, '985', "8'") },
  {
    name: 'gate-long-names',
    open: async (page) => {
      await startJob(page, long)
      await entry(page, 'size.width').fill('985')
      await entry(page, 'size.height').fill('1830')
      await page.waitForTimeout(500)
    },
  },
  {
    name: 'gate-how',
    open: async (page) => {
      await gateOf(page, '985', '1830')
      await page.getByRole('button', { name: /Brace angle/ }).click()
      await page.locator('.figure-working').waitFor()
    },
  },
  {
    name: 'gate-checks-open',
    open: async (page) => {
      await gateOf(page, '1120', '1290')
      await page.locator('.checks .line').click()
    },
  },
  ...['Cut list', 'Rip list', 'Holes', 'Saw settings', 'Order of making'].map((list): State => ({
    name: `gate-list-${list.toLowerCase().replaceAll(' ', '-')}`,
    open: async (page) => {
      await gateOf(page, '985', '1830')
      await page.getByRole('tab', { name: list }).click()
      await page.locator('.bench').evaluate((bench) => bench.scrollTo(0, bench.scrollHeight))
    },
  })),
  {
    name: 'gate-form-foot',
    open: async (page) => {
      await gateOf(page, '985', '1830')
      await page.locator('.gate-form').evaluate((form) => {
        form.querySelectorAll('details').forEach((more) => (more.open = true))
        form.scrollTo(0, form.scrollHeight / 2)
      })
    },
  },
  {
    name: 'gate-not-answering',
    open: async (page) => {
      await gateOf(page, '985', '1830')
      await page.route('**/request/jobs.change', (route) => route.abort())
      await entry(page, 'size.width').fill('1000')
      await page.getByText(/Not kept yet/).waitFor()
    },
  },
  { name: 'papers', open: issued },
  {
    name: 'papers-none',
    open: async (page) => {
      await gateOf(page, '985', '1830')
      await page.getByRole('link', { name: 'Papers' }).click()
      await page.getByText('No card issued yet').waitFor()
    },
  },
  {
    name: 'papers-refused',
    open: async (page) => {
      await gateOf(page, '60', '1830')
      await page.getByRole('link', { name: 'Papers' }).click()
      await page.getByRole('button', { name: 'Issue card 1' }).click()
      await page.getByText('The card can’t be issued yet.').waitFor()
    },
  },
  {
    name: 'papers-compared',
    open: async (page) => {
      await issued(page)
      await page.getByRole('link', { name: 'Gate' }).click()
      await entry(page, 'size.height').fill('6\' 2"')
      await page.waitForTimeout(900)
      await page.getByRole('link', { name: 'Papers' }).click()
      await page.getByRole('button', { name: 'Compare card 1' }).click()
      await page.getByRole('table', { name: 'What changed' }).waitFor()
    },
  },
  {
    name: 'customer',
    open: async (page) => {
      await startJob(page, long)
      await page.getByRole('link', { name: 'Customer and notes' }).click()
      await entry(page, 'notes').fill(
        'Dog in the yard. Hinges on the post that leans.\nKey with the neighbour at number 4.',
      )
    },
  },
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
    name: 'workshop-sample-asked',
    open: async (page) => {
      await page.getByRole('link', { name: 'Workshop', exact: true }).click()
      await page.getByRole('button', { name: 'Take the sample jobs out' }).click()
      await page.waitForTimeout(200)
    },
  },
]

const wanted = process.argv.slice(2)
const chosen = states.filter(({ name }) => wanted.length === 0 || wanted.some((word) => name.includes(word)))
const folder = inProject('build/out/pictures')
const books = mkdtempSync(join(tmpdir(), 'bracework-pictures-'))
mkdirSync(folder, { recursive: true })

const hosts = {
  empty: await hosted(join(books, 'empty.book'), { empty: true }),
  sample: await hosted(join(books, 'sample.book')),
}
const browser = await chromium.launch({
  executablePath: '/usr/bin/chromium',
  args: ['--no-sandbox', '--disable-gpu'],
})
try {
  for (const state of chosen)
    for (const size of sizes) {
      const context = await browser.newContext({ viewport: size, reducedMotion: 'reduce' })
      const page = await context.newPage()
      page.setDefaultTimeout(8000)
      await page.goto(state.empty ? hosts.empty.address : hosts.sample.address)
      await state
        .open(page)
        .catch((error: Error) => process.stderr.write(`${state.name}: ${error.message}\n`))
      for (const light of lights) {
        await page.emulateMedia({ colorScheme: light })
        await page.waitForTimeout(state.name === 'papers' ? 1500 : 150)
        await page.screenshot({ path: join(folder, `${state.name}-${size.name}-${light}.png`) })
      }
      await context.close()
    }
} finally {
  await browser.close()
  await Promise.all([hosts.empty.stop(), hosts.sample.stop()])
  rmSync(books, { recursive: true, force: true })
}
process.stdout.write(`${chosen.length * sizes.length * lights.length} pictures in ${folder}\n`)
