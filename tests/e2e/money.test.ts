import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { faultsInBothLights } from './lookFaults.ts'
import { bench, entry, giveSizes, kept, startJob, type Bench } from './onScreen.ts'
import {
  sheet,
  toPrice,
  toJobsPrice,
  gross,
  inPence,
  line,
  quotation,
  copyHash,
  openedHash,
  takeList,
  boardsTo,
} from './moneyPages.ts'
import { boardName, priceStandardGate } from './pricedBook.ts'

describe('from an estimate to a job done, with prices moving meanwhile', () => {
  let desk: Bench
  beforeAll(async () => {
    desk = await bench()
    await desk.restart(() => priceStandardGate(desk.book))
  })
  afterAll(() => desk.clear())

  it('is estimated, quoted, requoted after a rise, reprinted byte for byte, accepted, and then moves no more', async () => {
    const page = await desk.window()
    await startJob(page, 'Isolde Hartwhistle', 'Lower Rebate')
    await giveSizes(page, '985', '1785')
    await kept(page)
    await toPrice(page)
    await expect.poll(async () => inPence(await gross(page))).toBeGreaterThan(30_000)
    const before = await gross(page)

    await sheet(page, 'Quotations')
    await page.getByRole('button', { name: 'Issue quotation 1' }).click()
    await quotation(page, 1).waitFor()
    await expect.poll(() => quotation(page, 1).innerText()).toContain(before)
    await expect.poll(() => quotation(page, 1).getAttribute('data-stands')).toBe('stands')
    const first = await quotation(page, 1).getAttribute('data-hash')
    await page.getByRole('link', { name: 'Keep a copy' }).waitFor()
    expect(await copyHash(page)).toBe(first)

    const effects = await takeList(page, '3.15')
    expect(effects).toContain('Isolde Hartwhistle')

    await toJobsPrice(page, 'Isolde Hartwhistle')
    await expect.poll(() => gross(page)).not.toBe(before)
    const risen = await gross(page)
    expect(inPence(risen)).toBeGreaterThan(inPence(before))

    await sheet(page, 'Quotations')
    await expect.poll(() => quotation(page, 1).innerText()).toContain(before)
    await page.getByRole('button', { name: /^At today’s prices ?, quotation 1/ }).click()
    const table = page.getByRole('table', { name: 'Then and at today’s prices' })
    await table.waitFor()
    const total = table.getByRole('row').filter({ hasText: 'Total with VAT' })
    await expect.poll(() => total.innerText()).toContain(risen)
    expect(await total.innerText()).toContain(before)
    const moved = table.getByRole('row').filter({ hasText: boardName })
    expect(await moved.innerText()).toMatch(/\+£\d+\.\d\d/)
    const still = table.getByRole('row').filter({ hasText: 'Driving fixings' })
    expect(await still.innerText()).not.toContain('+')

    await page.getByRole('button', { name: 'Quote again as quotation 2' }).click()
    await quotation(page, 2).waitFor()
    await expect.poll(() => quotation(page, 2).innerText()).toContain(risen)
    expect(await quotation(page, 2).getAttribute('data-hash')).not.toBe(first)

    await desk.restart()
    const again = await desk.window()
    await toJobsPrice(again, 'Isolde Hartwhistle', 'Quotations')
    expect(await openedHash(again, 1)).toBe(first)

    await again.getByRole('button', { name: 'Accept quotation 2' }).click()
    await entry(again, 'accept.note').fill('Yes please, before the lambs')
    await again.getByRole('button', { name: `Accept at ${risen}` }).click()
    await expect.poll(() => quotation(again, 2).getAttribute('data-stands')).toBe('accepted')
    const second = await quotation(again, 2).getAttribute('data-hash')

    await boardsTo(again, '4.90')
    await toJobsPrice(again, 'Isolde Hartwhistle')
    await again.locator('[data-accepted]').waitFor()
    await expect
      .poll(() => again.locator('[data-accepted]').innerText())
      .toMatch(/it would be £[\d,.]+, £[\d.]+ more/)
    await expect.poll(() => gross(again)).toBe(risen)
    expect(await again.locator('[data-accepted]').innerText()).toContain('before the lambs')
    expect(await again.locator('.lines input').count()).toBe(0)
    await sheet(again, 'Quotations')
    expect(await openedHash(again, 2)).toBe(second)
    expect(await openedHash(again, 1)).toBe(first)
    await again.context().close()
  })

  it('counts boards by whole lengths where those kept are known, or all timber by waste as the workshop says', async () => {
    const page = await desk.window()
    await startJob(page, 'Cordelia Muntin')
    await giveSizes(page, '985', '1785')
    await toPrice(page)
    const boards = line(page, `timber.${boardName}`)
    const ledges = line(page, 'timber.ex 32 × 150 planed')
    // Nine boards of 1805 as blanks: two come on a length of 4.2 m, and the last on one of 2.4 m.
    await boards.getByText('5 lengths: 4 of 4.2 m, 1 of 2.4 m').waitFor()
    expect(await ledges.innerText()).toMatch(/m net and 10\s% waste/)
    await page.getByText('whole lengths as bought, what is left of them charged too').waitFor()
    const whole = await gross(page)
    await boards.getByRole('button', { name: /How\?/ }).click()
    const how = page.getByRole('dialog')
    await how.getByText(/proven the cheapest/).waitFor()
    expect(await how.innerText()).toContain('end trim mm')
    await page.keyboard.press('Escape')

    const counted = async (word: string) => {
      await page.getByRole('link', { name: 'Workshop', exact: true }).click()
      await page.locator(`[data-word="${word}"]`).click()
      await page.waitForTimeout(500)
      await toJobsPrice(page, 'Cordelia Muntin')
      await page.locator('[data-gross]').waitFor()
    }
    await counted('by net length and waste')
    await expect.poll(() => gross(page)).not.toBe(whole)
    expect(await boards.innerText()).toMatch(/m net and 10\s% waste/)
    await counted('by whole lengths')
    await expect.poll(() => gross(page)).toBe(whole)
    await page.context().close()
  })

  it('takes a quantity, minutes or a sum by hand, says so, and puts each back with one press', async () => {
    const page = await desk.window()
    await startJob(page, 'Ambrose Tenonby')
    await giveSizes(page, '1010', '1720')
    await toPrice(page)
    const worked = await gross(page)
    const rips = line(page, 'making.rip')
    await rips.getByLabel('Rips: minutes').fill('95')
    await rips.getByText('minutes put by hand').waitFor()
    await expect.poll(() => rips.getByLabel('Rips: sum').inputValue()).toBe('60.17')
    await rips.getByLabel('Rips: sum').fill('12.34')
    await rips.getByText('sum put by hand').waitFor()
    await page.reload()
    await page.locator('[data-gross]').waitFor()
    await expect.poll(() => rips.getByLabel('Rips: sum').inputValue()).toBe('12.34')
    await rips.getByRole('button', { name: /^Put back/ }).click()
    await expect.poll(() => gross(page)).toBe(worked)
    await page.context().close()
  })

  it('prints lines that add up to the price: groups to cost, cost and what is put on to net, net and tax to gross', async () => {
    const page = await desk.window()
    await startJob(page, 'Perpetua Sleeper')
    await giveSizes(page, '870', '1655')
    await toPrice(page)
    await page.getByRole('button', { name: 'Add a line of your own' }).press('Enter')
    await page.keyboard.type('Taking the old gate away')
    await page.keyboard.press('Enter')
    await page.keyboard.type('37.05')
    await page.locator('[data-group="extras"]').filter({ hasText: '£37.05' }).waitFor()
    const groups = await page.locator('[data-group]').allInnerTexts()
    const rows = page.getByRole('table', { name: 'From cost to price' }).getByRole('row')
    const told = await rows.evaluateAll((all) =>
      all.map((row) => [
        row.querySelector('th')?.textContent?.trim() ?? '',
        row.querySelector('td')?.textContent ?? '',
      ]),
    )
    const of = (name: string) => inPence(told.find(([words]) => words?.startsWith(name))?.[1] ?? '')
    expect(groups.reduce((sum, one) => sum + inPence(one), 0)).toBe(of('Cost of all lines'))
    expect(of('Cost of all lines') + of('Overhead') + of('Markup')).toBe(of('Net price'))
    expect(of('Net price') + of('VAT')).toBe(of('Price to the customer'))
    expect(inPence(await gross(page))).toBe(of('Price to the customer'))
    await page.context().close()
  })

  it('keeps the heads of a long estimate’s columns in sight under the price while it is scrolled', async () => {
    const page = await desk.window()
    await toJobsPrice(page, 'Perpetua Sleeper')
    await page.locator('[data-gross]').waitFor()
    const heads = page.getByRole('table', { name: 'Lines of the estimate' }).locator('thead th').nth(3)
    const place = async () => {
      const [head, price] = await Promise.all([
        heads.boundingBox(),
        page.locator('.bench .head').first().boundingBox(),
      ])
      return Math.round((head?.y ?? 0) - (price?.y ?? 0) - (price?.height ?? 0))
    }
    const last = page.locator('[data-group]').last()
    expect((await last.boundingBox())?.y ?? 0).toBeGreaterThan(614)
    await last.evaluate((row) => row.scrollIntoView({ block: 'center' }))
    await expect.poll(place).toBe(0)
    await page.context().close()
  })

  it('sets two versions side by side and on one quotation, and asks for what has no price first', async () => {
    const page = await desk.window()
    await startJob(page, 'Leopold Scotia')
    await giveSizes(page, '940', '1610')
    await toPrice(page)
    await sheet(page, 'Side by side')
    await page.getByRole('button', { name: 'Add a version to compare' }).click()
    await entry(page, 'option.2.name').fill('Framed')
    await entry(page, 'option.2.construction').click()
    await page.getByRole('option', { name: 'Framed, ledged and braced' }).click()
    const second = page.locator('[data-option="2"]')
    await second.getByText(/lines? ha(s|ve) no price yet/).waitFor()
    await second.getByText('Construction: framed, ledged and braced instead of ledged and braced.').waitFor()

    await sheet(page, 'Quotations')
    await page.getByRole('button', { name: 'Issue quotation 1' }).click()
    await page.getByText('The quotation can’t be issued yet.').waitFor()
    await expect.poll(() => page.locator('.problems').innerText()).toContain('Framed')

    await sheet(page, 'Side by side')
    await entry(page, 'option.2.construction').click()
    await page.getByRole('option', { name: 'Ledged', exact: true }).click()
    await second.locator('[data-gross]').waitFor()
    await entry(page, 'option.2.name').fill('Without a brace')
    await sheet(page, 'Quotations')
    await page.getByRole('button', { name: 'Issue quotation 1' }).click()
    await quotation(page, 1).waitFor()
    await expect.poll(() => quotation(page, 1).innerText()).toContain('Without a brace')
    expect(await quotation(page, 1).innerText()).toContain('As drawn')
    await page.getByRole('link', { name: 'Papers', exact: true }).click()
    await page.getByText('No card issued yet.').waitFor()
    await page.getByRole('button', { name: 'Issue card 1' }).waitFor()
    await page.context().close()
  })

  it('sets hours really worked beside the estimate, and takes a better standard time over', async () => {
    const page = await desk.window()
    await toJobsPrice(page, 'Isolde Hartwhistle', 'What it took')
    await entry(page, 'took.on').click()
    await page.getByRole('option', { name: 'Rips' }).click()
    await entry(page, 'took.quantity').fill('0.75')
    await page.getByRole('button', { name: 'Put it down' }).click()
    const table = page.getByRole('table', { name: 'Against the estimate' })
    await table.getByRole('row').filter({ hasText: 'Rips' }).getByText('0.8 h').waitFor()
    await page.getByRole('link', { name: /how estimates stood/ }).click()
    const row = page.getByRole('row').filter({ hasText: 'Rips' })
    await row.getByText('4 min', { exact: true }).waitFor()
    const offer = row.getByRole('button', { name: /^Take over/ })
    const better = /Take over ([\d.]+) min/.exec(await offer.innerText())?.[1] ?? ''
    await offer.click()
    await row.getByText(`${better} min`, { exact: true }).waitFor()
    await expect.poll(() => offer.count()).toBe(0)
    await page.getByRole('link', { name: 'Standard times, in the workshop' }).click()
    await expect.poll(() => entry(page, 'times.rip').inputValue()).toBe(better)
    await page.context().close()
  })

  it('charges by the workshop’s own settings: no tax when not registered, a margin in place of a markup', async () => {
    const page = await desk.window()
    await page.getByRole('link', { name: 'Workshop', exact: true }).click()
    await page.getByText('margin on price').click()
    await expect.poll(() => entry(page, 'money.profit.bp').inputValue()).toBe('16.67')
    await page.getByText('not registered').click()
    await page.getByText('No tax is put on prices').waitFor()
    await page.waitForTimeout(500)
    await toJobsPrice(page, 'Ambrose Tenonby')
    await page.locator('[data-net]').waitFor()
    await expect.poll(() => page.locator('[data-tax]').count()).toBe(0)
    const net = await page.locator('[data-net]').innerText()
    await expect.poll(() => gross(page)).toBe(net)
    await page.getByRole('rowheader', { name: 'Margin 16.67 %, a markup of 20 %' }).waitFor()
    await page.context().close()
  })

  it('has no serious fault for a screen reader or a weak eye on any sheet, light and dark, and nothing runs off sideways', async () => {
    const page = await desk.window()
    await toJobsPrice(page, 'Leopold Scotia')
    for (const name of ['Estimate', 'Side by side', 'Quotations', 'What it took']) {
      await sheet(page, name)
      await page.waitForTimeout(300)
      expect({ name, faults: await faultsInBothLights(page) }).toEqual({ name, faults: [] })
    }
    await page.context().close()
  })
})
