import { entry, gateOf, long, startJob, type State } from './state.ts'

/** The gate page with a plain gate. */
export const gateStates: State[] = [
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
  ...['Cut list', 'Rip list', 'Holes', 'Saws', 'Setting out', 'Making'].map((list): State => ({
    name: `gate-list-${list.toLowerCase().replaceAll(' ', '-')}`,
    open: async (page) => {
      await gateOf(page, '985', '1830')
      await page.getByRole('tab', { name: list, exact: true }).last().click()
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
]
