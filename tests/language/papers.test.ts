import { describe, expect, it } from 'vitest'
import { laidOutIn, type PaperWords } from '../../electron/paperLanguage.ts'
import { measureWith } from '../../electron/paint/wordRuns.ts'
import { loadFonts } from '../../electron/fonts.ts'
import { inAmerican } from '../../shared/language/americanWords.ts'
import { jobCard } from '../../shared/papers/jobCard.ts'
import { timberOrder } from '../../shared/papers/order/timberOrder.ts'
import type { Measure, PageMark, PaperDocument } from '../../shared/papers/page.ts'
import { quotation } from '../../shared/papers/quotation.ts'
import { outside } from '../drawing/wordBoxes.ts'
import { cardOf } from '../fixtures/cards.ts'
import { hardGates } from '../fixtures/hardGates.ts'
import { orderInput } from '../papers/orderInputs.ts'
import { boxesOn, printable } from '../papers/pageBoxes.ts'
import { quotationOf } from '../papers/quotationInputs.ts'
import { englishMessages, plainWords, pseudoCatalogue } from './pseudo.ts'

const measure = measureWith(await loadFonts())
const tryout = pseudoCatalogue()

/** Texts of a mark; of a drawing its title, notes and all that is written in it. */
function textsIn(mark: PageMark): string[] {
  if (mark.kind === 'text') return [mark.text]
  if (mark.kind !== 'drawing') return []
  const { title, notes, marks } = mark.drawing
  return [title, ...notes, ...marks.flatMap((one) => (one.kind === 'text' ? [one.text] : []))]
}
const pagesOf = (paper: PaperDocument): string[] =>
  paper.pages.map((page) => page.marks.flatMap(textsIn).join(' '))

type Made = { written: unknown; layOut: (measure: Measure) => PaperDocument }

const [gate] = hardGates
if (!gate) throw new Error('no gate')
const card = cardOf(gate)
const quoted = quotationOf()

const papers: Record<string, () => Promise<Made>> = {
  'a job card': async () => ({
    written: [card.header, { spec: card.spec }],
    layOut: (wide) => jobCard(card, wide),
  }),
  'a quotation': async () => ({
    written: [quoted.header, quoted.business, quoted.money.options.map(({ name, spec }) => ({ name, spec }))],
    layOut: (wide) => quotation(quoted, wide),
  }),
  'a timber order': async () => {
    const input = await orderInput(2)
    const { workshop, business, rack, order } = input
    return {
      written: [{ workshop }, business, rack, order],
      layOut: (wide) => timberOrder(input, wide),
    }
  },
}

/** Sizes of wood, units, names of the workshop’s own things in the fixtures, months (written by the place, here Britain). */
const alike = /^(ex|planed|screw|larch|oak|hand|held|saw|March|May|June|VAT)$/

/**
 * Words put together in ways that no message can tell: a piece of ironmongery named after its kind in the list, with its plural and its
 * possessive, in a quotation’s plain words. They stay English in another language.
 */
const notTold =
  /^(two|tee|hinges|with|straps|thumb|latch|rim|deadlock|and|pull|handle|carry|the|gate’s|clear|oil|of|ledged|braced|try|it|dry|edge|cut|away|centre)$/

/** Entries that hold choices and workings, whose words are ours. */
const ours = new Set(['spec', 'plan', 'parts', 'request', 'sections', 'money'])

/** Every word a person wrote in what a paper is made from. */
function wordsIn(value: unknown): string[] {
  if (typeof value === 'string') return value.match(/\p{L}+/gu) ?? []
  if (typeof value !== 'object' || value === null) return []
  return Object.entries(value).flatMap(([key, one]) => (ours.has(key) ? [] : wordsIn(one)))
}

/** Words in narrow places that a language a third longer loses the end of: what stands by the card's four large figures, and its head. */
const mostCut: Record<string, number> = { 'a job card': 4 }

const inWords = (words: PaperWords | undefined, { written, layOut }: Made) =>
  laidOutIn(words, written, { measure, layOut })

describe.each(Object.keys(papers))('%s in a language nobody speaks', (name) => {
  it('has every word of ours looked up and every word of a person’s as it was written', async () => {
    const paper = await papers[name]?.()
    if (!paper) throw new Error(`no paper ${name}`)
    const own = new Set(wordsIn(paper.written))
    const left = pagesOf(inWords(tryout, paper)).flatMap((page) => plainWords(page))
    const all =
      pagesOf(inWords(undefined, paper))
        .join(' ')
        .match(/\p{L}{2,}/gu) ?? []
    const missed = left.filter((word) => !own.has(word) && !alike.test(word) && !notTold.test(word))
    process.stdout.write(
      `${name}: ${all.length - missed.length} of ${all.length} words are looked up or a person’s own\n`,
    )
    expect(missed).toEqual([])
  })

  it('breaks its lines where the words printed end: within the margins, hardly anything cut short', async () => {
    const paper = await papers[name]?.()
    if (!paper) throw new Error(`no paper ${name}`)
    const made = inWords(tryout, paper)
    const over = made.pages.flatMap((page) => outside(boxesOn(page, measure), printable(page)))
    expect(over).toEqual([])
    const cut = (one: PaperDocument) =>
      new Set(pagesOf(one).flatMap((page) => page.match(/\S*…/gu) ?? [])).size
    expect(cut(made) - cut(inWords(undefined, paper))).toBeLessThanOrEqual(mostCut[name] ?? 0)
  })
})

describe('what a person wrote on a paper', () => {
  it('stays, though it reads as one of our own messages', () => {
    const title = 'Nothing in the way'
    const named = {
      ...card,
      header: { ...card.header, title, customer: { ...card.header.customer, name: 'Cut list' } },
    }
    const made = laidOutIn(tryout, [named.header, named.spec], {
      measure,
      layOut: (wide) => jobCard(named, wide),
    })
    expect(tryout.messages['Cut list']).toBeDefined()
    expect(pagesOf(made).every((page) => page.includes('Cut list, Testford'))).toBe(true)
  })
})

describe('American words on a paper', () => {
  it('are those of the table, with days month first', () => {
    const messages = Object.fromEntries(englishMessages().map((message) => [message, inAmerican(message)]))
    const made = laidOutIn({ messages, locale: 'en-US' }, [card.header, card.spec], {
      measure,
      layOut: (wide) => jobCard({ ...card, unit: 'in', format: 'letter' }, wide),
    })
    const words = pagesOf(made).join(' ')
    expect(words).toContain('promised June 12, 2026')
    expect(words).toMatch(/batten/i)
    expect(words).not.toMatch(/\b(timber|ledges?|colour|metres?|planed)\b/i)
  })
})
