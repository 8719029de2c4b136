import type { Page } from '@playwright/test'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { jpegFacts } from '../../shared/notes/jpegFacts.ts'
import { asTaken } from '../fixtures/photograph.ts'
import { bench, entry, kept, startJob, type Bench } from './onScreen.ts'

/** A picture drawn by the page: red at the left, blue at the right, of a kind and a size. */
async function picture(page: Page, type: string, width: number, height: number): Promise<Buffer> {
  const given: [string, number, number] = [type, width, height]
  const text = await page.evaluate(([kind, wide, high]) => {
    const canvas = Object.assign(document.createElement('canvas'), { width: wide, height: high })
    const pen = canvas.getContext('2d')
    if (!pen) throw new Error('nothing to draw with')
    pen.fillStyle = '#d00000'
    pen.fillRect(0, 0, wide / 2, high)
    pen.fillStyle = '#0000d0'
    pen.fillRect(wide / 2, 0, wide / 2, high)
    return canvas.toDataURL(kind, 0.9).split(',')[1] ?? ''
  }, given)
  return Buffer.from(text, 'base64')
}

/** The colours a little in from the top and from the foot of the large picture that is shown, and its size. */
const shownColours = (page: Page) =>
  page.locator('[data-shown-photograph] img').evaluate(async (img: HTMLImageElement) => {
    await img.decode()
    const { naturalWidth: width, naturalHeight: height } = img
    const canvas = Object.assign(document.createElement('canvas'), { width, height })
    const pen = canvas.getContext('2d')
    pen?.drawImage(img, 0, 0)
    const at = (y: number): string => {
      const [red = 0, , blue = 0] = pen?.getImageData(width / 2, y, 1, 1).data ?? []
      return red > blue ? 'red' : 'blue'
    }
    return { width, height, top: at(10), foot: at(height - 10) }
  })

const inBook = (page: Page, name: string, payload: object) =>
  page.evaluate(
    async ([asked, given]) => {
      const reply = await fetch(`/request/${asked}`, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify(given),
      })
      return (await reply.json()).value
    },
    [name, payload] as const,
  )

describe('a job’s notes and photographs', () => {
  let desk: Bench
  beforeAll(async () => {
    desk = await bench()
  })
  afterAll(() => desk.clear())

  it('real files come in by choosing and by pasting: the right way up, scaled down, without the camera’s notes', async () => {
    const page = await desk.window()
    await startJob(page, 'Isolde Hartwhistle', 'Lower Rebate')
    await page.getByRole('link', { name: 'Notes', exact: true }).click()
    const taken = asTaken(await picture(page, 'image/jpeg', 2000, 1000), 6)
    const webp = await picture(page, 'image/webp', 300, 200)
    const letter = Buffer.from('Dear Sir or Madam')
    await page.getByLabel('Photographs to add').setInputFiles([
      { name: 'IMG_1.jpg', mimeType: 'image/jpeg', buffer: taken },
      { name: 'letter.jpg', mimeType: 'image/jpeg', buffer: letter },
      { name: 'scan.png', mimeType: 'image/png', buffer: webp },
    ])
    await page.locator('[data-photograph="2"]').waitFor()
    await page.getByText('It is no JPEG, PNG or WebP picture.').waitFor()
    await page.locator('[data-photograph="1"]').click()
    await page.locator('[data-shown-photograph] img').waitFor()
    // Orientation 6: the first column of the picture as stored is its top (Exif 2.3, section 4.6.4).
    expect(await shownColours(page)).toEqual({ width: 800, height: 1600, top: 'red', foot: 'blue' })
    await page.keyboard.press('ArrowRight')
    await page.getByText('2 of 2').waitFor()
    await entry(page, 'photograph.words').fill('the leaning post')
    await page.keyboard.press('Escape')
    await page.locator('[data-photograph="2"]', { hasText: 'the leaning post' }).waitFor()
    const jobId = Number(/job\/(\d+)/.exec(page.url())?.[1])
    const list = await inBook(page, 'photographs.list', { jobId })
    const { base64 } = await inBook(page, 'photographs.bytes', { id: list[0].id })
    expect(jpegFacts(Buffer.from(base64, 'base64'))).toEqual({ width: 800, height: 1600, cameraNotes: false })
    expect(Buffer.from(base64, 'base64').includes('Nether Test')).toBe(false)

    const png = (await picture(page, 'image/png', 120, 90)).toString('base64')
    await page.evaluate((text) => {
      const bytes = Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0))
      const clipboardData = new DataTransfer()
      clipboardData.items.add(new File([bytes], 'pasted.png', { type: 'image/png' }))
      window.dispatchEvent(new ClipboardEvent('paste', { clipboardData, cancelable: true }))
    }, png)
    await page.locator('[data-photograph="3"]').waitFor()

    await page.locator('[data-photograph="3"]').click()
    await page.getByRole('button', { name: 'Take away' }).click()
    await page.getByRole('button', { name: 'Take it away' }).click()
    await page.getByText('2 of 2').waitFor()
    await page.keyboard.press('Escape')
    await page.getByRole('button', { name: 'Put it back' }).click()
    await page.locator('[data-photograph="3"]').waitFor()
  })

  it('a note is written, mended with its old words kept, found by searching, and seen in another window', async () => {
    const page = await desk.window()
    await page.getByRole('link', { name: /Isolde Hartwhistle/ }).click()
    await page.getByRole('link', { name: 'Notes', exact: true }).click()
    await entry(page, 'note.words').fill('Ring frist, there is a ferret.')
    const other = await desk.window()
    await other.goto(`${desk.host().origin}/${new URL(page.url()).hash}`)
    await other.locator('[data-photograph="3"]').waitFor()
    // What was begun is still there after the screen died.
    await page.reload()
    expect(await entry(page, 'note.words').inputValue()).toBe('Ring frist, there is a ferret.')
    await page.getByRole('button', { name: 'Write it down' }).click()
    await page.locator('[data-note="1"]').waitFor()
    await other.locator('[data-note="1"]').waitFor({ timeout: 10_000 })
    await page.locator('[data-mend]').click()
    await page.getByLabel('The note').fill('Ring first, there is a ferret.')
    await page.getByRole('button', { name: 'Mend it' }).click()
    await page.locator('[data-happened]', { hasText: 'A note mended. It said “Ring frist' }).waitFor()
    await entry(page, 'notes').fill('Mind the step.')
    await kept(page)
    await page.locator('[data-happened]', { hasText: 'Standing note: “Mind the step.”' }).waitFor()
    await page.getByRole('combobox', { name: 'Show' }).click()
    await page.getByRole('option', { name: 'Photographs' }).click()
    await page.locator('[data-happened]', { hasText: 'Photograph 3 put back' }).waitFor()
    expect(await page.locator('[data-happened]', { hasText: 'Ring' }).count()).toBe(0)
    await page.getByRole('link', { name: 'Jobs', exact: true }).click()
    await page.getByLabel('Search the jobs').fill('ferret leaning step')
    await page.locator('a.line', { hasText: 'Isolde Hartwhistle' }).waitFor()
    await other.close()
  })
})
