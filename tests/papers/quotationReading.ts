import type { Page, PageText, PaperDocument } from '../../shared/papers/page.ts'

/** Words printed upright on a page. */
export const textsOn = (page: Page): PageText[] =>
  page.marks.flatMap((mark) => (mark.kind === 'text' && mark.angle === undefined ? [mark] : []))
/** All words of a paper. */
export const wordsOf = (paper: PaperDocument): string =>
  paper.pages
    .flatMap(textsOn)
    .map(({ text }) => text)
    .join(' ')
    .replace(/\s+/g, ' ')

/** A printed sum in tenths of a penny; NaN for what is none. */
const tenthsOf = (text: string): number => {
  const found = /^(−?)[£€$]([\d,]+)\.(\d{2})(\d?)$/.exec(text)
  if (!found) return NaN
  const [, sign, whole_ = '', pennies = '', tenth = ''] = found
  const size = Number(whole_.replaceAll(',', '')) * 1000 + Number(pennies) * 10 + Number(tenth || '0')
  return sign === '−' ? 0 - size : size
}

/** The rows of sums as they are printed, page by page from the top: the words at the left, the sums at the right from left to right. */
export function printedRows(paper: PaperDocument): { label: string; sums: number[] }[] {
  return paper.pages.flatMap((page) => {
    const texts = textsOn(page)
    const lines = [...new Set(texts.map(({ y }) => y))].sort((a, b) => a - b)
    return lines.flatMap((y) => {
      const row = texts.filter((mark) => mark.y === y).sort((a, b) => a.x - b.x)
      const sums = row
        .filter(({ anchor }) => anchor === 'end')
        .map(({ text }) => (text === '–' ? 0 : tenthsOf(text)))
      const label = row
        .filter(({ anchor }) => anchor === 'start')
        .map(({ text }) => text)
        .join(' ')
      return sums.length > 0 && sums.every((sum) => !Number.isNaN(sum)) ? [{ label, sums }] : []
    })
  })
}
