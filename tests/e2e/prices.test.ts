import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { readFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from '@playwright/test'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { bytesOf } from '../spreadsheet/written.ts'
import { bench, entry, type Bench } from './onScreen.ts'
import { fillPrices, supplierName } from './fillPrices.ts'
import { apply, priceOf, rowOf, search, toPrices } from './priceList.ts'

describe('the price book at the screen', () => {
  let desk: Bench
  let lists: string
  beforeAll(async () => {
    desk = await bench()
    lists = mkdtempSync(join(tmpdir(), 'bracework-lists-'))
  })
  afterAll(async () => {
    await desk.clear()
    rmSync(lists, { recursive: true, force: true })
  })
  const listFile = (name: string, bytes: Uint8Array) => {
    const path = join(lists, name)
    writeFileSync(path, bytes)
    return path
  }
  const giveList = async (page: Page, path: string) => {
    await page.getByRole('button', { name: 'From a merchant’s list' }).click()
    await page.setInputFiles('input[type="file"]', path)
  }

  it('takes the first item from the keyboard alone', async () => {
    const page = await desk.window()
    await toPrices(page)
    await page.getByText('No prices yet').waitFor()
    await page.getByRole('button', { name: 'Add the first item' }).press('Enter')
    await expect
      .poll(() => page.evaluate(() => document.activeElement?.getAttribute('data-field')))
      .toBe('item.name')
    await page.keyboard.type('ex 25 × 125 larch boards')
    const words: Record<string, string> = {
      'line.supplierName': 'Much Mallet Timber',
      'line.code': 'LB125',
      'line.pence': '2.35',
      'line.lengths': '3000, 3.6m',
    }
    const lists = ['item.species', 'line.supplier', 'line.unit']
    for (let at = 'item.name', step = 0; at !== 'line.lengths' && step < 25; step += 1) {
      await page.keyboard.press(lists.includes(at) ? 'Tab' : 'Enter')
      at = await page.evaluate(() => document.activeElement?.getAttribute('data-field') ?? '')
      await page.keyboard.type(words[at] ?? '')
    }
    await page.keyboard.press('Enter')
    await rowOf(page, 'ex 25 × 125 larch boards').waitFor()
    expect(await priceOf(page, 'LB125')).toBe('2.35')
    const card = page.locator('.side')
    await card.getByText('£2.35').waitFor()
    expect(await entry(page, 'line.lengths').inputValue()).toBe('3000, 3600')
    await page.keyboard.press('Escape')
    await page.context().close()
  })

  it('puts up what the filter shows by a percent, shown first, and takes it back', async () => {
    await desk.restart(() => fillPrices(desk.book, 40))
    const page = await desk.window()
    await toPrices(page)
    await page.getByRole('button', { name: 'Ironmongery' }).click()
    await search(page, 'hinge')
    await page.getByRole('button', { name: 'Put prices up' }).click()
    await page.keyboard.type('7.5')
    const first = page.locator('.price-grid .room .line').first()
    const before = Number(await first.locator('input').inputValue())
    const becomes = async () => Number((await first.locator('.to').innerText()).replace(/[^\d.]/g, ''))
    await expect.poll(becomes).toBeCloseTo(before * 1.075, 1)
    await page.keyboard.press('Enter')
    await page.getByRole('heading', { name: 'Before prices change' }).waitFor()
    await page.getByRole('button', { name: 'Put 10 prices up from today' }).waitFor()
    await expect.poll(() => page.locator('.rise-lines .room .line').count()).toBe(10)
    await expect.poll(() => page.locator('.rise-lines').innerText()).toMatch(/\+7\.\d\s%/)
    await apply(page)
    await expect
      .poll(() => page.locator('.notice').innerText())
      .toContain('7.5\u00a0% on all ironmongery, with “hinge”')
    const stands = async () => Number(await first.locator('input').inputValue())
    await expect.poll(stands).toBeCloseTo(before * 1.075, 1)
    await page.getByRole('button', { name: 'When prices changed' }).click()
    await page.getByRole('button', { name: /^Take it back ?: 7\.5 %/ }).click()
    await page.getByText(/^taken back/).waitFor()
    await page.keyboard.press('Escape')
    await expect.poll(stands).toBe(before)
    await page.context().close()
  })

  it('types prices over in the list with arrows, Enter and Escape, and pastes a column', async () => {
    const page = await desk.window()
    await toPrices(page)
    await page.getByRole('button', { name: 'Fixings' }).click()
    const cells = page.locator('.price-grid .room input')
    const stood = await Promise.all([0, 1, 2, 3].map((n) => cells.nth(n).inputValue()))
    await cells.nth(0).focus()
    await page.keyboard.type('12.05')
    await page.keyboard.press('Enter')
    await page.keyboard.type('twelve')
    await page.keyboard.press('ArrowDown')
    await page.getByRole('alert').filter({ hasText: 'twelve' }).waitFor()
    await page.keyboard.press('Escape')
    await expect.poll(() => cells.nth(1).inputValue()).toBe(stood[1])
    await page.keyboard.press('ArrowDown')
    await cells.nth(2).evaluate((cell) => {
      const clipboardData = new DataTransfer()
      clipboardData.setData('text/plain', '1.002,50\r\n9,15\r\n')
      cell.dispatchEvent(new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true }))
    })
    await page.getByText(/three prices/i).waitFor()
    await expect.poll(() => cells.nth(3).inputValue()).toBe('9.15')
    await page.getByRole('button', { name: 'See what it does' }).click()
    await page.getByText('by hand').waitFor()
    await page.getByText('1,002.50').waitFor()
    await page.getByRole('button', { name: 'Leave prices as they are' }).click()
    await page.getByRole('button', { name: 'Put the old ones back' }).click()
    await expect.poll(() => cells.nth(0).inputValue()).toBe(stood[0])
    await page.context().close()
  })

  it('takes a windows-1252 list with semicolons and decimal commas: a wrong guess put right, bad lines told, applied, taken back', async () => {
    const page = await desk.window()
    await toPrices(page)
    const text = [
      'Preisliste Größe 1;;;;',
      'Code;Bezeichnung;Grundpreis;Neuer Preis;Notiz',
      'C00000;Lärche;1,11;14,90;x',
      'C00004;Fichte;2,22;16,40;x',
      'C00008;Eiche;3,33;auf Anfrage;x',
      'C00012;Kiefer;4,44;1.020,00;x',
      'ZZ9;Fremdes;5,55;9,99;x',
    ].join('\r\n')
    await giveList(page, listFile('frühjahr.csv', bytesOf(text, 'windows-1252', false)))
    await page.getByText(/something in your book/).waitFor()
    await page.getByText('Lärche').waitFor()
    await entry(page, 'list.supplier').filter({ hasText: supplierName }).waitFor()
    await entry(page, 'column.2').selectOption('price')
    await page.locator('.outcome b').filter({ hasText: /^4$/ }).waitFor()
    expect(await entry(page, 'column.3').inputValue()).not.toBe('price')
    await entry(page, 'column.3').selectOption('price')
    await page.locator('.outcome b').filter({ hasText: /^3$/ }).waitFor()
    await expect
      .poll(() => page.locator('.left-out').innerText())
      .toMatch(/line 5[\s\S]*“auf Anfrage” isn’t a price/)
    await page.getByRole('button', { name: '1 not in your book' }).click()
    await expect.poll(() => page.locator('.left-out').innerText()).toContain('ZZ9 Fremdes')
    await page.getByRole('button', { name: 'See what it does' }).click()
    await page.locator('.rise-lines').getByText('1,020.00').waitFor()
    await apply(page)
    await expect.poll(() => page.locator('.notice').innerText()).toContain('list frühjahr.csv')
    await search(page, 'C00012')
    await expect.poll(() => priceOf(page, 'C00012')).toBe('1,020.00')
    await page.locator('.notice').getByRole('button', { name: 'Take it back' }).click()
    await expect.poll(() => priceOf(page, 'C00012')).not.toBe('1,020.00')
    await page.context().close()
  })

  it('takes the VAT off a list that has it in its prices, said before anything is booked', async () => {
    const page = await desk.window()
    await toPrices(page)
    const text = 'Code;Description;Price\nC00012;Kiefer;12.00\n'
    await giveList(page, listFile('with-vat.csv', bytesOf(text, 'utf-8', false)))
    await page.locator('.outcome b').filter({ hasText: /^1$/ }).waitFor()
    await page.getByText('with VAT', { exact: true }).click()
    await page.getByText('20 % VAT is taken off every price: £12.00 on line 2 goes in as £10.00.').waitFor()
    await entry(page, 'list.taxBp').fill('5')
    await page.getByText('goes in as £11.43.').waitFor()
    await entry(page, 'list.taxBp').fill('20')
    await page.getByText('goes in as £10.00.').waitFor()
    await page.getByRole('button', { name: 'See what it does' }).click()
    await page.locator('.rise-lines').getByText('10.00', { exact: true }).waitFor()
    await page.getByText('list with-vat.csv, 20 % VAT taken off').waitFor()
    await page.getByRole('button', { name: 'Leave prices as they are' }).click()
    await page.context().close()
  })

  it('holds a list that is given before the book is open against the whole of it', async () => {
    const page = await desk.window()
    await page.route(/request\/(prices\.some|book\.summary)/, async (route) => {
      await new Promise((go) => setTimeout(go, 1200))
      await route.continue()
    })
    await page.goto(`${new URL(page.url()).origin}/#/prices/list`)
    await page.reload()
    const text = 'Code;Description;Price inc VAT\nC00012;Kiefer;12.00\n'
    await page.setInputFiles('input[type="file"]', listFile('early.csv', bytesOf(text, 'utf-8', false)))
    await page.locator('.outcome b').filter({ hasText: /^1$/ }).waitFor()
    await page.getByText('goes in as £10.00.').waitFor()
    await page.context().close()
  })

  it('keeps a price for a day ahead beside the one that holds today', async () => {
    const page = await desk.window()
    await toPrices(page)
    await search(page, 'C00000')
    await expect.poll(() => page.locator('.price-grid .room .line').count()).toBe(1)
    const stood = await priceOf(page, 'C00000')
    await page.locator('.price-grid .room input').first().fill('77.70')
    await page.keyboard.press('Enter')
    await page.getByRole('button', { name: 'See what it does' }).click()
    await entry(page, 'startsOn').fill('2 months')
    await page.getByRole('button', { name: /^(Put|Change) 1 price .*from \d/ }).waitFor()
    await apply(page)
    await expect.poll(() => rowOf(page, 'C00000').innerText()).toMatch(/77\.70 from \d+ \w+ 20\d\d/)
    expect(await priceOf(page, 'C00000')).toBe(stood)
    expect(await rowOf(page, 'C00000').locator('.ahead').count()).toBe(1)
    await page.context().close()
  })

  it('keeps a copy of the list that, given back as a merchant’s list, changes nothing', async () => {
    const page = await desk.window()
    await toPrices(page)
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Keep a copy of this list' }).click(),
    ])
    const bytes = await readFile(await download.path())
    expect([...bytes.subarray(0, 3)]).toEqual([0xef, 0xbb, 0xbf])
    await giveList(page, listFile('ours.csv', bytes))
    await page.locator('.outcome b').filter({ hasText: /^41$/ }).waitFor()
    expect(await page.locator('.left-out').count()).toBe(0)
    await page.getByRole('button', { name: 'See what it does' }).click()
    await page.getByText('Nothing changes').waitFor()
    await page.locator('[data-apply]:disabled').waitFor()
    await page.context().close()
  })

  it('says what a workbook is, and what a list that can’t be told apart is', async () => {
    const page = await desk.window()
    await toPrices(page)
    await giveList(page, listFile('book.csv', Uint8Array.of(0x50, 0x4b, 3, 4, 0, 0)))
    await page.getByText(/This is a workbook/).waitFor()
    const torn = `code;name;price\n${Array.from({ length: 900 }, (_, n) => `A${n};"x;1,0${n % 10}`).join('\n')}`
    await page.setInputFiles('input[type="file"]', listFile('torn.csv', bytesOf(torn, 'utf-8', false)))
    await entry(page, 'list.supplier').click()
    await page.getByRole('option', { name: supplierName }).click()
    await page.getByText(/can’t be told apart/).waitFor()
    await page.context().close()
  })
})
