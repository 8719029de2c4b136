import type { Page } from '@playwright/test'
import { entry, long, startJob, type State } from './state.ts'

type Picture = { name: string; mimeType: string; buffer: Buffer }

/** Invented photographs of a gate: boards before a wall, drawn by the page itself. */
export async function inventedPhotographs(
  page: Page,
  sizes: readonly (readonly [number, number])[],
): Promise<Picture[]> {
  const texts = await page.evaluate(async (given) => {
    const made: string[] = []
    for (const [place, [width, height]] of given.entries()) {
      const canvas = Object.assign(document.createElement('canvas'), { width, height })
      const pen = canvas.getContext('2d')
      if (!pen) throw new Error('nothing to draw with')
      pen.fillStyle = `hsl(${20 + place * 9} 25% ${55 + (place % 4) * 6}%)`
      pen.fillRect(0, 0, width, height)
      const [left, board] = [width * 0.22, (width * 0.56) / 7]
      for (let n = 0; n < 7; n += 1) {
        pen.fillStyle = `hsl(${30 + place * 5} 38% ${48 + ((n * 5 + place) % 4) * 4}%)`
        pen.fillRect(left + n * board, height * 0.16, board - width / 200, height * 0.72)
      }
      pen.fillStyle = '#2b2a26'
      for (const y of [0.28, 0.74]) pen.fillRect(left, height * y, width * 0.4, height * 0.03)
      made.push(canvas.toDataURL('image/jpeg', 0.8).split(',')[1] ?? '')
    }
    return made
  }, sizes)
  return texts.map((text, place) => ({
    name: `gate ${place + 1}.jpg`,
    mimeType: 'image/jpeg',
    buffer: Buffer.from(text, 'base64'),
  }))
}

const toNotes = (page: Page) => page.getByRole('link', { name: 'Notes', exact: true }).click()

async function addPhotographs(page: Page, sizes: readonly (readonly [number, number])[]): Promise<void> {
  await page.getByLabel('Photographs to add').setInputFiles(await inventedPhotographs(page, sizes))
  await page.locator(`[data-photograph="${sizes.length}"]`).waitFor({ timeout: 60_000 })
}

async function write(page: Page, words: string): Promise<void> {
  await entry(page, 'note.words').fill(words)
  await page.getByRole('button', { name: 'Write it down' }).click()
  await page
    .locator('.note', { hasText: words.slice(0, 20) })
    .first()
    .waitFor()
}

/** A job with some weeks of notes, photographs and work in it. */
async function lived(
  page: Page,
  given: { name: string; town?: string; title?: string } = { name: 'Isolde Hartwhistle' },
) {
  await startJob(page, { town: 'Lower Rebate', title: 'Side gate, by the water butt', ...given })
  await entry(page, 'size.width').fill('885')
  await entry(page, 'size.height').fill('1830')
  await page.waitForTimeout(700)
  await page.getByRole('button', { name: 'Surveyed' }).first().click()
  await toNotes(page)
  await entry(page, 'notes').fill('Dog in the yard. Hinges on the post that leans.')
  await write(page, 'Rang about the colour: she would like it to match the shed.')
  await write(
    page,
    'On site. The left post leans 12 mm over its height, towards the road.\nNew post, or pack the hinges?',
  )
}

const shapes = [
  [1600, 1200],
  [1200, 1600],
  [1600, 900],
  [1000, 1000],
] as const

const working = {
  ...{ name: 'Isolde Hartwhistle', town: 'Lower Rebate', title: 'Side gate, by the water butt' },
}

/** A job's notes, photographs and log, from empty to too much. */
export const noteStates: State[] = [
  {
    name: 'notes-empty',
    open: async (page) => {
      await startJob(page, working)
      await toNotes(page)
      await page.getByText('No photographs yet').waitFor()
    },
  },
  {
    name: 'notes-typical',
    open: async (page) => {
      await lived(page)
      await addPhotographs(page, shapes)
      await page.waitForTimeout(1500)
    },
  },
  {
    name: 'notes-long',
    open: async (page) => {
      await lived(page, long)
      await write(
        page,
        `${'A wall of old brick, out of plumb, with ivy that must come off first. '.repeat(12)}`,
      )
      await addPhotographs(
        page,
        Array.from({ length: 14 }, (_, n) => shapes[n % 4] ?? shapes[0]),
      )
      await page.locator('[data-photograph="2"]').click()
      await entry(page, 'photograph.words').fill(
        'The post at the hanging side, seen from the road, with the spirit level against it and the string line',
      )
      await page.getByRole('button', { name: 'Back to the notes' }).click()
      await page.waitForTimeout(2500)
    },
  },
  {
    name: 'notes-mending',
    open: async (page) => {
      await lived(page)
      await page.locator('[data-mend]').first().click()
      await page
        .getByRole('button', { name: /^Take away/ })
        .first()
        .click()
    },
  },
  {
    name: 'notes-other-day',
    open: async (page) => {
      await lived(page)
      await entry(page, 'note.words').fill('He called in.')
      await page.getByRole('button', { name: 'Of another day' }).click()
      await entry(page, 'note.time').fill('half past')
    },
  },
  {
    name: 'notes-photograph',
    open: async (page) => {
      await startJob(page, working)
      await toNotes(page)
      await addPhotographs(page, shapes)
      await page.locator('[data-photograph="1"]').click()
      await entry(page, 'photograph.words').fill('The old gate, as it hangs now')
      await page.waitForTimeout(500)
    },
  },
  {
    name: 'notes-photograph-taking-away',
    open: async (page) => {
      await startJob(page, working)
      await toNotes(page)
      await addPhotographs(page, shapes)
      await page.locator('[data-photograph="2"]').click()
      await page.getByRole('button', { name: 'Take away' }).click()
      await page.waitForTimeout(500)
    },
  },
  {
    name: 'notes-taken-away',
    open: async (page) => {
      await lived(page)
      await addPhotographs(page, shapes.slice(0, 2))
      await page
        .getByRole('button', { name: /^Take away/ })
        .first()
        .click()
      await page.getByRole('button', { name: 'Take it away' }).click()
      await page.locator('[data-photograph="1"]').click()
      await page.getByRole('button', { name: 'Take away' }).click()
      await page.getByRole('button', { name: 'Take it away' }).click()
      await page.getByRole('button', { name: 'Back to the notes' }).click()
      await page.waitForTimeout(800)
    },
  },
  {
    name: 'notes-trouble',
    open: async (page) => {
      await page.route('**/request/photographs.list', async (route) => {
        const reply = await route.fetch()
        const photographs = await reply.json()
        if (photographs.value?.[1]) photographs.value[1].thumbnail = null
        await route.fulfill({ json: photographs })
      })
      await lived(page)
      await addPhotographs(page, shapes.slice(0, 3))
      const heic = Buffer.from([0, 0, 0, 24, ...Buffer.from('ftypheic', 'latin1'), 0, 0, 0, 0])
      await page.getByLabel('Photographs to add').setInputFiles([
        { name: 'IMG_4711.HEIC', mimeType: 'image/heic', buffer: heic },
        { name: 'letter.jpg', mimeType: 'image/jpeg', buffer: Buffer.from('Dear Sir or Madam') },
      ])
      await page.getByText('It is no JPEG').waitFor()
      await page.reload()
      await page.getByText('not shown').waitFor()
      await page
        .getByLabel('Photographs to add')
        .setInputFiles([{ name: 'IMG_4711.HEIC', mimeType: 'image/heic', buffer: heic }])
      await page.getByText('It is a HEIC picture').waitFor()
    },
  },
]
