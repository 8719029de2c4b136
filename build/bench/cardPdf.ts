import type { Page } from '@playwright/test'
import { loadFonts } from '../../electron/fonts.ts'
import { makeCard } from '../../electron/makeCard.ts'
import { measureWith } from '../../electron/paint/wordRuns.ts'
import { design } from '../../shared/gate/design.ts'
import { jobCard } from '../../shared/papers/jobCard.ts'
import type { JobCardInput } from '../../shared/papers/jobCardInput.ts'
import { inChromium } from './browser.ts'
import { cardPage } from './cardPage.ts'
import { exampleSpecs } from './exampleSpecs.ts'
import { median, written, type Effort, type Measured } from './row.ts'

/** Least ratio that is acceptable; the aim is twice as fast. */
const floor = 1.5

function cardInput(): JobCardInput {
  const spec = exampleSpecs().find((one) => one.construction === 'ledged-braced')
  if (!spec) throw new Error('the bench needs a braced example')
  const outcome = design(spec)
  if (!outcome.made) throw new Error('the bench needs an example that can be made')
  const customer = { name: 'An invented customer', address: '', town: 'Much Mallet', phone: '', email: '' }
  const header = {
    workshop: 'A made-up workshop',
    number: '2026-001',
    title: 'Side gate',
    customer,
    due: '2026-12-18',
    notes: '',
    revision: 1,
    issuedAt: '2026-11-25T10:00:00.000Z',
  }
  return { header, spec, design: outcome.design, unit: 'mm', format: 'a4', draft: false }
}

async function timed(work: () => Promise<unknown>): Promise<number> {
  const start = performance.now()
  await work()
  return performance.now() - start
}

/** Both ways turn about, so that whatever else the machine does falls on both alike. */
async function turnAbout(page: Page, input: JobCardInput, rounds: number) {
  const html = cardPage(jobCard(input, measureWith(await loadFonts())))
  const [ours, whole, printed]: [number[], number[], number[]] = [[], [], []]
  for (let round = -2; round < rounds; round += 1) {
    const own = await timed(() => makeCard(input))
    const set = await timed(() => page.setContent(html))
    const print = await timed(() => page.pdf({ preferCSSPageSize: true }))
    if (round < 0) continue
    ours.push(own)
    whole.push(set + print)
    printed.push(print)
  }
  return { ours: median(ours), whole: median(whole), printed: median(printed) }
}

/** A job card's PDF, laid out and painted, against a warm Chromium that lays the same content out and prints it. */
export async function cardPdf({ quick }: Effort): Promise<Measured> {
  const input = cardInput()
  const cold = await timed(() => makeCard(input))
  return inChromium(async (browser, startMs) => {
    const page = await browser.newPage()
    const { ours, whole, printed } = await turnAbout(page, input, quick ? 2 : 25)
    const ratio = whole / ours
    return {
      row: {
        name: 'card-pdf',
        value: ours,
        unit: 'ms',
        against: `a warm Chromium setting and printing the same card: ${written(whole)} ms`,
        ratio,
        aim: 2,
        holds: ratio >= 2,
      },
      said: [
        `floor ${floor} times as fast: ${ratio >= floor ? 'holds' : 'missed'}; its printing alone took ${written(printed)} ms`,
        `stated apart: Chromium's start ${written(startMs)} ms; our first card, with faces and painter to load, ${written(cold)} ms`,
      ],
    }
  })
}
