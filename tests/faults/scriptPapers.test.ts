import { PDFDocument } from 'pdf-lib'
import { describe, expect, it } from 'vitest'
import { fullSizeSheets } from '../../shared/papers/fullSize/fullSizeSheets.ts'
import { fullSizeKinds } from '../../shared/papers/fullSize/template.ts'
import type { PaperDocument } from '../../shared/papers/page.ts'
import { sampleSize } from '../fixtures/sample.ts'
import { opened, painted, printedMeasure } from '../papers/paperReading.ts'
import { everyPaper, type SheetInput } from '../sheets/everySheet.ts'
import { namedSheets, twentyGates } from '../sheets/namedSheets.ts'
import { scriptWords } from './scriptWords.ts'

const [printer, day] = [{ across: 100, along: 100 }, '2026-05-04']

/** Every kind of paper there is, of one gate on which everything bears one name. */
const papersOf = (input: SheetInput): { name: string; paper: PaperDocument }[] => [
  ...everyPaper(input),
  {
    name: 'full-size sheets',
    paper: fullSizeSheets(
      { ...input, fullSize: { kinds: [...fullSizeKinds], day, printer } },
      printedMeasure,
    ),
  },
]

type Opened = Awaited<ReturnType<typeof opened>>

/** What a paper would do besides being looked at: run something, open something, lead somewhere. Nothing, in ours. */
async function doings(pdf: Opened): Promise<string[]> {
  const [actions, opening, attached] = [
    await pdf.getJSActions(),
    await pdf.getOpenAction(),
    await pdf.getAttachments(),
  ]
  const pages = await Promise.all(
    Array.from({ length: pdf.numPages }, async (_, i) => {
      const page = await pdf.getPage(i + 1)
      return { links: await page.getAnnotations(), runs: await page.getJSActions() }
    }),
  )
  return [
    ...(actions ? ['runs when opened'] : []),
    ...(opening ? ['does something when opened'] : []),
    ...(attached ? ['has something attached'] : []),
    ...pages.flatMap(({ links, runs }, i) =>
      links.length > 0 || runs ? [`page ${i + 1} leads somewhere`] : [],
    ),
  ]
}

/** A paper's words without their spaces, as lines may break anywhere. */
async function wordsOn(pdf: Opened): Promise<string> {
  const pages = await Promise.all(
    Array.from({ length: pdf.numPages }, async (_, i) => (await pdf.getPage(i + 1)).getTextContent()),
  )
  return pages
    .flatMap(({ items }) => items.map((item) => ('str' in item ? item.str : '')))
    .join('')
    .replaceAll(/\s/g, '')
}

/** Whether a name stands on a paper: its beginning, as a long one ends in '…'; on labels a surname's. */
function standsOn(text: string, words: string, kind: string): boolean {
  if (!kind.startsWith('part labels')) return text.includes(words.replaceAll(/\s/g, '').slice(0, 24))
  return words.split(/\s+/).some((part) => text.includes(part.slice(0, 8)))
}

describe('names that would run as a script, on paper', () => {
  const count = sampleSize('script names on every paper', { usual: 1, long: scriptWords.length, of: 'names' })
  // The one that is written in the words of a PDF itself is always among them.
  const chosen = [38, ...scriptWords.keys()]
    .filter((place, at, all) => all.indexOf(place) === at)
    .slice(0, count)
  it(`are words and nothing more on every kind of paper (${count} of ${scriptWords.length})`, async () => {
    const kinds = new Set<string>()
    for (const place of chosen) {
      const words = scriptWords[place] ?? ''
      const gate = twentyGates[place % twentyGates.length] ?? twentyGates[0]
      if (!gate) throw new Error('no gate')
      for (const { name, paper } of papersOf(await namedSheets(gate, words))) {
        const pdf = await opened(await painted(paper))
        expect([name, words, await doings(pdf)]).toEqual([name, words, []])
        expect([name, words, standsOn(await wordsOn(pdf), words, name)]).toEqual([name, words, true])
        await pdf.loadingTask.destroy()
        kinds.add(name)
      }
    }
    process.stdout.write(
      `script names on paper: ${count} on ${kinds.size} kinds of paper: 0 ran, all read back as words\n`,
    )
  })

  it('would be found out if a paper ran something or led somewhere', async () => {
    const made = await PDFDocument.create()
    made.addPage()
    made.addJavaScript('greeting', 'app.alert(1)')
    expect(await doings(await opened(await made.save()))).toEqual(['runs when opened'])
  })
})
