import { lookUp, type Told } from '../shared/language/lookUp.ts'
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

/** A look-up for one paper: what a person wrote in what it is made from (names, titles, notes) stays as it is. */
function toldBut(words: PaperWords, written: unknown): (text: string) => string {
  const own = ownWords()
  noteOwnWords(written, own)
  const told: Told = lookUp(words, own)
  return told.sentence
}

function markIn(mark: PageMark, said: (text: string) => string): PageMark {
  if (mark.kind === 'text') return { ...mark, text: said(mark.text) }
  return mark.kind === 'drawing' ? { ...mark, drawing: drawingIn(mark.drawing, said) } : mark
}

/**
 * Lays a paper out in the chosen words: they are looked up before anything is measured, so that lines break where the words printed end. What
 * is set without being measured (a word over a column, a name in a drawing) is looked up afterwards.
 */
export function laidOutIn(
  words: PaperWords | undefined,
  written: unknown,
  { measure, layOut }: { measure: Measure; layOut: (measure: Measure) => PaperDocument },
): PaperDocument {
  if (!words) return layOut(measure)
  const said = toldBut(words, written)
  const measured: Measure = Object.assign(
    (text: string, size: number, weight: Parameters<Measure>[2]) => measure(said(text), size, weight),
    { said },
  )
  const paper = layOut(measured)
  return {
    ...paper,
    language: words.locale,
    pages: paper.pages.map((page) => ({ ...page, marks: page.marks.map((mark) => markIn(mark, said)) })),
  }
}
