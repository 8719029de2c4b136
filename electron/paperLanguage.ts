import { lookUp } from '../shared/language/lookUp.ts'
import { noteOwnWords, ownWords } from '../shared/language/ownWords.ts'
import { drawingIn } from '../shared/language/drawingIn.ts'
import type { Catalogue } from '../shared/language/catalogue.ts'
import type { Measure, PageMark, PaperDocument } from '../shared/papers/page.ts'
import type { Languages } from './languages.ts'

/** The words papers are printed in: their look-up and where their dates are from; undefined is British English. */
export type PaperWords = Pick<Catalogue, 'messages' | 'locale'>

/** The words of the language the workshop has chosen. */
export function inChosenWords(languages: Languages, tag: string): PaperWords | undefined {
  const found = tag === '' ? undefined : languages.read(tag)
  return found && { messages: found.messages, locale: found.locale }
}

/** One of the program's own texts in the chosen words. */
export const saidIn = (words: PaperWords | undefined, text: string): string =>
  words ? lookUp(words, ownWords()).sentence(text) : text

/** A look-up for one paper: what a person wrote in what it is made from (names, titles, notes) stays as it is. */
function toldBut(words: PaperWords, written: unknown): (text: string) => string {
  const own = ownWords()
  noteOwnWords(written, own)
  return lookUp(words, own).sentence
}

/** Looks words up and knows which lines of a page come of words looked up before. */
function saidOnce(said: (text: string) => string) {
  const told = new Set<string>()
  let all = ''
  return {
    said: (text: string): string => {
      const words = said(text)
      if (!told.has(words)) all += `\n${words}`
      told.add(words)
      return words
    },
    /** A line broken or cut out of words that were looked up already. */
    isTold: (line: string): boolean => all.includes(line.replace(/…$/, '').trim()),
  }
}

/**
 * Lays a paper out in the chosen words: they are looked up before anything is measured, so that lines break where the words printed end. What
 * is set without being broken into lines (a word over a column, a name in a drawing) is looked up afterwards, and once only.
 */
export function laidOutIn(
  words: PaperWords | undefined,
  written: unknown,
  { measure, layOut }: { measure: Measure; layOut: (measure: Measure) => PaperDocument },
): PaperDocument {
  if (!words) return layOut(measure)
  const said = toldBut(words, written)
  const lines = saidOnce(said)
  const wide = (...[text, size, weight]: Parameters<Measure>) =>
    measure(lines.isTold(text) ? text : said(text), size, weight)
  const paper = layOut(Object.assign(wide, { said: lines.said }))
  const marked = (mark: PageMark): PageMark => {
    if (mark.kind === 'drawing') return { ...mark, drawing: drawingIn(mark.drawing, said) }
    return mark.kind === 'text' && !lines.isTold(mark.text) ? { ...mark, text: said(mark.text) } : mark
  }
  const pages = paper.pages.map((page) => ({ ...page, marks: page.marks.map(marked) }))
  return { ...paper, title: said(paper.title), language: words.locale, pages }
}
