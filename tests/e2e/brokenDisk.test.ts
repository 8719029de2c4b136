import { dirname } from 'node:path'
import type { Page } from '@playwright/test'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { breakDisk } from '../faults/brokenDisk.ts'
import { bench, entry, giveSizes, kept, startJob, type Bench } from './onScreen.ts'

/** Every trouble told on the screen. */
const told = (page: Page): Promise<string[]> => page.getByRole('alert').allInnerTexts()

describe('work at the screen while the disk takes nothing', () => {
  let desk: Bench
  beforeAll(async () => {
    desk = await bench()
  })
  afterAll(() => desk.clear())

  it.each([
    {
      what: 'is full',
      name: 'Ottilie Bead',
      call: 'pwrite64',
      error: 'ENOSPC',
      words: /no room left on/,
      width: '1011',
    },
    {
      what: 'fails',
      name: 'Caspar Reeve',
      call: 'fsync',
      error: 'EIO',
      words: /disk did not answer/,
      width: '1023',
    },
  ] as const)(
    'stays in its field and is told once with the folder while it $what, and is kept by itself once that is over',
    async ({ name, words, width, ...fault }) => {
      const page = await desk.window()
      await startJob(page, name)
      await giveSizes(page, '985', '1785')
      await kept(page)
      const disk = await breakDisk(desk.host().pid, { ...fault, files: [`${desk.book}-wal`], from: 1 })
      try {
        await entry(page, 'size.width').fill(width)
        await expect.poll(() => told(page)).toHaveLength(1)
        const [sentence = ''] = await told(page)
        expect(sentence).toMatch(words)
        expect(sentence).toContain(dirname(desk.book))
        expect(await entry(page, 'size.width').inputValue()).toBe(width)
        await page.waitForTimeout(2000)
        expect(await told(page)).toHaveLength(1)
        expect(await entry(page, 'size.width').inputValue()).toBe(width)
      } finally {
        await disk.mend()
      }
      await expect.poll(() => told(page)).toEqual([])
      await kept(page)
      await page.reload()
      await expect.poll(() => entry(page, 'size.width').inputValue()).toBe(width)
      await page.context().close()
    },
  )
})
