import type { Page } from '@playwright/test'
import { loadFonts } from '../../electron/fonts.ts'
import { makeCard } from '../../electron/makeCard.ts'
import { measureWith } from '../../electron/paint/wordRuns.ts'
import { jobCard } from '../../shared/papers/jobCard.ts'
import type { JobCardInput } from '../../shared/papers/jobCardInput.ts'
import { inChromium } from './browser.ts'
import { cardInput, standardGate } from './cardInput.ts'
import { cardPage } from './cardPage.ts'
import { exampleSpecs } from './exampleSpecs.ts'
import { median, quantile, written, type Effort, type Measured } from './row.ts'

/** How many times as fast as Chromium the card is to be, and what it mustn't fall under. */
const [aim, floor] = [2, 1.5]

async function timed(work: () => Promise<unknown>): Promise<number> {
  const start = performance.now()
  await work()
  return performance.now() - start
}

const print = (page: Page): Promise<Buffer> => page.pdf({ preferCSSPageSize: true, printBackground: true })

/** Opens the card's page and waits for its faces. Throws when they aren't there: another face would be another content. */
async function open(page: Page, html: string): Promise<void> {
  await page.setContent(html)
  const faces = await page.evaluate(async () =>
    [...(await document.fonts.ready)].map(({ family, weight, status }) => `${family} ${weight} ${status}`),
  )
  for (const face of ['text 400 loaded', 'text 600 loaded'])
    if (!faces.includes(face)) throw new Error(`Chromium hasn't the card's faces: ${faces.join(', ')}`)
}

/**
 * Gives an open page, its faces loaded already, the card's content anew: what a card costs Chromium beside printing, as laying out is
 * part of what it costs us.
 */
const setAnew = (page: Page, content: string): Promise<number> =>
  page.evaluate(async (words) => {
    document.body.innerHTML = words
    await document.fonts.ready
    return document.body.offsetHeight
  }, content)

/** Pages of a PDF as Chromium writes it. */
const pagesOf = (bytes: Buffer): number =>
  bytes.toString('latin1').match(/\/Type\s*\/Page(?![s\w])/g)?.length ?? 0

/** Both ways turn about, so that whatever else the machine does falls on both alike. The first rounds only warm up. */
async function turnAbout(page: Page, input: JobCardInput, rounds: number) {
  const fonts = await loadFonts()
  const card = jobCard(input, measureWith(fonts))
  const html = cardPage(card, fonts)
  await open(page, html)
  const content = await page.evaluate(() => document.body.innerHTML)
  const [ours, whole, printed]: [number[], number[], number[]] = [[], [], []]
  for (let round = -3; round < rounds; round += 1) {
    const own = await timed(() => makeCard(input))
    const set = await timed(() => setAnew(page, content))
    const its = await timed(() => print(page))
    if (round < 0) continue
    ours.push(own)
    whole.push(set + its)
    printed.push(its)
  }
  const opened: number[] = []
  for (let round = 0; round < Math.min(5, rounds); round += 1)
    opened.push(await timed(() => open(page, html)))
  const pages = pagesOf(await print(page))
  if (pages !== card.pages.length)
    throw new Error(`Chromium printed ${pages} pages of a card of ${card.pages.length}`)
  return { ours, whole, printed, opened: median(opened), pages }
}

/** The first card of each example gate in a warm program: no line of it but the usual ones has been set before. */
async function otherCards(): Promise<number> {
  const times: number[] = []
  for (const spec of exampleSpecs()) {
    const input = cardInput(spec)
    times.push(await timed(() => makeCard(input)))
  }
  return median(times)
}

const range = (times: number[]): string =>
  `${written(median(times))} ms (from ${written(quantile(times, 0))} to ${written(quantile(times, 1))})`

/** A job card's PDF, laid out and painted, against a warm Chromium, its faces loaded, that is given the same content and prints it. */
export async function cardPdf({ quick }: Effort): Promise<Measured> {
  const input = cardInput(standardGate())
  const cold = await timed(() => makeCard(input))
  return inChromium(async (browser, startMs) => {
    const page = await browser.newPage()
    const rounds = quick ? 1 : 31
    const { ours, whole, printed, opened, pages } = await turnAbout(page, input, rounds)
    const others = await otherCards()
    const ratio = median(whole) / median(ours)
    return {
      row: {
        name: 'card-pdf',
        value: median(ours),
        unit: 'ms',
        against: `a warm Chromium's print-to-PDF of the same card, content to PDF like ours: ${written(median(whole))} ms`,
        ratio,
        aim,
        holds: ratio >= aim,
      },
      said: [
        `floor ${floor} times as fast: ${ratio >= floor ? 'holds' : 'MISSED'}`,
        `${pages} pages, ${rounds} rounds turn about: ours ${range(ours)}, Chromium ${range(whole)}`,
        `its printing alone, of a page laid out before: ${range(printed)}, ${written(median(printed) / median(ours))} times ours`,
        `stated apart: our first card, with faces and painter to load, ${written(cold)} ms; the first card of another gate, warm, ${written(others)} ms`,
        `stated apart: Chromium's start ${written(startMs)} ms; opening the page before printing, faces and all, ${written(opened)} ms`,
      ],
    }
  })
}
