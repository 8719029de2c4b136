import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { chromium, type Browser, type Page } from '@playwright/test'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { hosted, type Hosted } from '../../../build/hosted.ts'
import { inProject } from '../../../build/paths.ts'
import { byKeys, type Story } from './byKeys.ts'
import { byTouch } from './byTouch.ts'
import { finger } from './finger.ts'
import { keyHand } from './keyHand.ts'
import { outcomes, type Given } from './outcomes.ts'
import {
  actionsOf,
  coreTasks,
  mostForDaily,
  mostForReprint,
  tableLines,
  type CoreTask,
  type Way,
} from './table.ts'
import { jobOf, told } from './told.ts'

const folder = mkdtempSync(join(tmpdir(), 'bracework-tasks-'))
/** Another disk than the book's own, as a memory stick is. */
const stick = mkdtempSync('/dev/shm/STICK-')

const stories: Record<Way, Story> = {
  keys: { name: 'Isolde Hartwhistle', drawn: 'Corin Spokeshave', stick },
  touch: { name: 'Ambrose Tenonby', drawn: 'Zoé Copeau-Lœuillet', stick },
}
const givens: Record<Way, Given> = {
  keys: {
    ...{ town: 'Lower Rebate', title: 'Side gate', widths: [1004, 1001, 1006], heights: [1850, 1846] },
    ...{
      rises: 12,
      width: 970,
      extra: 3705,
      minutes: 95,
      note: 'Yes please, before the lambs',
      percent: '4.5',
    },
  },
  touch: {
    ...{ town: 'Upper Kerf', title: 'Yard gate', widths: [1104, 1101, 1106], heights: [1750, 1746] },
    ...{ rises: 15, width: 1060, extra: 4115, minutes: 105, note: 'Go ahead', percent: '3.5' },
  },
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

/** A card is old once the gate was drawn on and another issued. */
async function overtakeCard(page: Page, name: string): Promise<void> {
  const { id } = await jobOf(page, name)
  const { job } = await told(page, 'jobs.change', {
    id,
    changes: [{ path: 'spec.boards.rip', value: 'both' }],
  })
  await told(page, 'papers.issue', { jobId: id, format: 'a4', version: job.version })
}

describe('the twelve core tasks', () => {
  const held: { host?: Hosted; browser?: Browser; page?: Page } = {}
  const counted: Partial<Record<CoreTask, Partial<Record<Way, number>>>> = {}
  const page = (): Page => {
    if (!held.page) throw new Error('no window is open')
    return held.page
  }
  /** The program as it opens: the board of the work in hand, nothing in the hand. */
  async function opens(): Promise<void> {
    await page().goto(`${held.host?.origin}/#/jobs`)
    await page().reload()
    await page().locator('[data-job] a.line').first().waitFor()
  }
  async function openWindow(way: Way): Promise<void> {
    await held.page?.context().close()
    const context = await held.browser?.newContext({
      viewport: { width: 1093, height: 614 },
      hasTouch: way === 'touch',
    })
    held.page = await context?.newPage()
    page().setDefaultTimeout(12_000)
    await page().addInitScript(notePrinting)
    await page().goto(held.host?.address ?? '')
    if (way === 'touch')
      await page().evaluate(() => localStorage.setItem('bracework.look', JSON.stringify({ hand: 'fingers' })))
    await told(page(), 'settings.change', { name: 'Test Bench Joinery', welcomed: true })
  }
  async function does(way: Way, task: CoreTask): Promise<number> {
    const hand = way === 'keys' ? keyHand(page()) : finger(page())
    if ('press' in hand) await byKeys[task](hand, stories.keys)
    else await byTouch[task](hand, stories.touch)
    return hand.count()
  }
  async function task(way: Way, named: CoreTask): Promise<void> {
    if (named === 'reprint an old card') await overtakeCard(page(), stories[way].name)
    await opens()
    const count = await does(way, named)
    await outcomes[named](page(), stories[way], givens[way])
    counted[named] = { ...counted[named], [way]: count }
    expect(count).toBeLessThanOrEqual(actionsOf[named][way])
  }

  beforeAll(async () => {
    held.host = await hosted(join(folder, 'workshop.book'))
    held.browser = await chromium.launch({
      executablePath: '/usr/bin/chromium',
      args: ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-sync'],
    })
  })
  afterAll(async () => {
    const lines = coreTasks.map(
      (one) => `${one}: ${counted[one]?.keys ?? '–'} by keys, ${counted[one]?.touch ?? '–'} by touch`,
    )
    process.stdout.write(`actions from the opening screen on\n${lines.join('\n')}\n`)
    await held.browser?.close()
    await held.host?.stop()
    rmSync(folder, { recursive: true, force: true })
    rmSync(stick, { recursive: true, force: true })
  })

  describe('by the keyboard alone', () => {
    beforeAll(() => openWindow('keys'))
    for (const named of coreTasks) it(`${named}: no mouse, no finger`, () => task('keys', named))
  })
  describe('by a finger alone', () => {
    beforeAll(() => openWindow('touch'))
    it('has the program wear its size for fingers', async () => {
      await opens()
      expect(await page().evaluate(() => document.documentElement.dataset['hand'])).toBe('fingers')
    })
    for (const named of coreTasks) it(`${named}: no mouse, no chord`, () => task('touch', named))
  })

  it('takes no more actions than something daily may, and an old card no more than four', () => {
    const counts = Object.values(actionsOf).flatMap(({ keys, touch }) => [keys, touch])
    expect(Math.max(...counts)).toBeLessThanOrEqual(mostForDaily)
    const { keys, touch } = actionsOf['reprint an old card']
    expect(Math.max(keys, touch)).toBeLessThanOrEqual(mostForReprint)
  })
  it('has its table of actions written down for whoever carries the program on', () => {
    const [, section = ''] = readFileSync(inProject('DEVELOPERS.md'), 'utf8').split('## Core tasks\n')
    const rows = section.split('\n').filter((line) => line.startsWith('|'))
    const cells = (row: string) => row.split('|').map((cell) => cell.trim().replace(/^-+$/, '---'))
    expect(rows.slice(0, tableLines().length).map(cells)).toEqual(tableLines().map(cells))
  })
})
