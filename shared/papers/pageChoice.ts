import { bad, good, type Problem, type Result } from '../problem.ts'

const refused = (message: string): Problem => ({ code: 'refused', field: 'pages', message })

const everyPage = (pages: number): number[] => Array.from({ length: pages }, (_, i) => i + 1)

/** The pages that one piece of a choice means, '3' or '3–4', or what is wrong with it. */
function pagesOf(piece: string, pages: number): Result<number[]> {
  const [, from, to] = /^(\d{1,6})(?:\s*(?:-|–|—|to)\s*(\d{1,6}))?$/i.exec(piece) ?? []
  if (from === undefined)
    return bad(
      refused(`‘${piece}’ can’t be read as pages; write them like 1, 3–4, or leave it empty for all`),
    )
  const [first, last] = [Number(from), Number(to ?? from)]
  if (first > last) return bad(refused(`${first}–${last} runs backwards; write ${last}–${first}`))
  const missing = [first, last].find((page) => page < 1 || page > pages)
  if (missing !== undefined)
    return bad(
      refused(
        pages === 1
          ? `there is no page ${missing}; this paper has one page`
          : `there is no page ${missing}; this paper has pages 1 to ${pages}`,
      ),
    )
  return good(everyPage(last).slice(first - 1))
}

/**
 * The pages chosen of a paper of so many, in their order, each once: '1, 3–4' of 6 is [1, 3, 4]. Nothing, or 'all', is every page. A hyphen, a
 * dash or 'to' may stand between two; commas, semicolons or 'and' between pieces. Bad input says what is wrong with the first piece that is.
 */
export function pageChoice(text: string, pages: number): Result<number[]> {
  const words = text.trim()
  if (words === '' || words.toLowerCase() === 'all') return good(everyPage(pages))
  const pieces = words
    .split(/[,;]|\band\b/i)
    .map((piece) => piece.trim())
    .filter((piece) => piece !== '')
  const chosen = new Set<number>()
  for (const piece of pieces) {
    const read = pagesOf(piece, pages)
    if (!read.ok) return read
    for (const page of read.value) chosen.add(page)
  }
  if (chosen.size === 0)
    return bad(refused('no page is chosen; write pages like 1, 3–4, or leave it empty for all'))
  return good([...chosen].sort((a, b) => a - b))
}
