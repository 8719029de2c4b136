import { readFileSync } from 'node:fs'
import type { Page } from '@playwright/test'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { taskDesk, type TaskDesk } from '../taskDesk.ts'
import { byKeys, type Story } from './byKeys.ts'
import { byTouch } from './byTouch.ts'
import { finger } from './finger.ts'
import { keyHand } from './keyHand.ts'
import { outcomes, type Given } from './outcomes.ts'
import { overtakeCard } from './storyJob.ts'
import {
  actionsOf,
  coreTasks,
  mostForDaily,
  mostForReprint,
  tableLines,
  type CoreTask,
  type Way,
} from './table.ts'

const people: Record<Way, Omit<Story, 'stick'>> = {
  keys: { name: 'Isolde Hartwhistle', drawn: 'Corin Spokeshave' },
  touch: { name: 'Ambrose Tenonby', drawn: 'Zoé Copeau-Lœuillet' },
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

/** The program as it opens: the board of the work in hand, nothing in the hand. */
async function opens(page: Page): Promise<void> {
  await page.goto(`${new URL(page.url()).origin}/#/jobs`)
  await page.reload()
  await page.locator('[data-job] a.line').first().waitFor()
}

/** Does a task that way, and gives how many actions it took. */
async function does(page: Page, { task, way, story }: { task: CoreTask; way: Way; story: Story }) {
  if (way === 'keys') {
    const keys = keyHand(page)
    await byKeys[task](keys, story)
    return keys.count()
  }
  const touch = finger(page)
  await byTouch[task](touch, story)
  return touch.count()
}

describe('the twelve core tasks', () => {
  const held: { desk?: TaskDesk; page?: Page } = {}
  const counted: Record<Way, Partial<Record<CoreTask, number>>> = { keys: {}, touch: {} }
  const page = (): Page => {
    if (!held.page) throw new Error('no window is open')
    return held.page
  }
  async function openWindow(way: Way): Promise<void> {
    await held.page?.context().close()
    held.page = await held.desk?.window({ byFingers: way === 'touch' })
  }
  async function counts(way: Way, task: CoreTask): Promise<void> {
    const story = { ...people[way], stick: held.desk?.stick ?? '' }
    if (task === 'reprint an old card') await overtakeCard(page(), story.name)
    await opens(page())
    const count = await does(page(), { task, way, story })
    await outcomes[task](page(), story, givens[way])
    counted[way][task] = count
    expect(count).toBeLessThanOrEqual(actionsOf[task][way])
  }

  beforeAll(async () => {
    held.desk = await taskDesk()
  })
  afterAll(async () => {
    const lines = coreTasks.map(
      (one) => `${one}: ${counted.keys[one] ?? '–'} by keys, ${counted.touch[one] ?? '–'} by touch`,
    )
    process.stdout.write(`actions from the opening screen on\n${lines.join('\n')}\n`)
    await held.desk?.clear()
  })

  describe('by the keyboard alone', () => {
    beforeAll(() => openWindow('keys'))
    for (const task of coreTasks) it(`${task}: no mouse, no finger`, () => counts('keys', task))
  })
  describe('by a finger alone', () => {
    beforeAll(() => openWindow('touch'))
    it('has everything pressed as wide as a thumb, the screen being touched', async () => {
      await opens(page())
      expect(await page().evaluate(() => document.documentElement.dataset['hand'])).toBe('fingers')
    })
    for (const task of coreTasks) it(`${task}: no mouse, no chord`, () => counts('touch', task))
  })

  it('takes no more actions than something daily may, and an old card no more than four', () => {
    const all = Object.values(actionsOf).flatMap(({ keys, touch }) => [keys, touch])
    expect(Math.max(...all)).toBeLessThanOrEqual(mostForDaily)
    const { keys, touch } = actionsOf['reprint an old card']
    expect(Math.max(keys, touch)).toBeLessThanOrEqual(mostForReprint)
  })
  it('has its table of actions written down for whoever carries the program on', () => {
    const notes = readFileSync(new URL('../../../DEVELOPERS.md', import.meta.url), 'utf8')
    const rows = (notes.split('## Core tasks\n')[1] ?? '').split('\n').filter((line) => line.startsWith('|'))
    const cells = (row: string) => row.split('|').map((cell) => cell.trim().replace(/^-+$/, '---'))
    expect(rows.slice(0, tableLines().length).map(cells)).toEqual(tableLines().map(cells))
  })
})
