import type { Pence } from '../../shared/pricing/pence.ts'
import type { PriceUnit } from '../../shared/pricing/price.ts'
import { codeKey } from '../../shared/spreadsheet/columns.ts'
import type { ListLine } from '../../shared/spreadsheet/listLine.ts'
import type { BadLine } from '../../shared/spreadsheet/rows.ts'
import { fold } from './priceRows.ts'
import { perWords } from './priceWords.ts'

/** A line of the price book that a merchant's list may price. unit is null where it has no price yet. */
export type BookLine = {
  itemId: number
  supplierId: number | null
  code: string
  words: string
  unit: PriceUnit | null
  size: number | null
}

/** What a list is held against: the book's lines, the suppliers by name, and whose list it is (null: as its own column says). */
export type MatchBook = {
  lines: BookLine[]
  suppliers: { id: number; name: string }[]
  supplierId: number | null
}

/** A line of a list with the line of the book that it prices. */
export type MatchedLine = {
  line: number
  itemId: number
  supplierId: number | null
  unit: PriceUnit
  size: number | null
  pence: Pence
  rounded: boolean
}

/** What came of a list. unknown: goods that the book doesn't have, the first of them; bad: what can't be used, likewise; the counts are of all. */
export type ListOutcome = {
  matched: MatchedLine[]
  bad: BadLine[]
  badCount: number
  unknown: { line: number; text: string }[]
  unknownCount: number
  repeated: number
}

/** How many bad and unknown lines are kept to be shown. */
export const mostShown = 1000

type Found = { line: BookLine; unit: PriceUnit; size: number | null }

const wordsKey = (words: string): string => fold(words).replace(/\s+/g, ' ').trim()
const by = (supplierId: number | null, key: string): string => `${supplierId ?? ''}|${key}`

function indexed(lines: readonly BookLine[], keyOf: (line: BookLine) => string): Map<string, BookLine[]> {
  const index = new Map<string, BookLine[]>()
  for (const line of lines) {
    const key = keyOf(line)
    if (key === '') continue
    const own = index.get(by(line.supplierId, key))
    if (own) own.push(line)
    else index.set(by(line.supplierId, key), [line])
  }
  return index
}

/** Which of an item's lines a list's line prices, or why that can't be told. */
function pick(lines: readonly BookLine[], { per }: ListLine): Found | string {
  const [only] = lines
  const items = new Set(lines.map(({ itemId }) => itemId))
  if (items.size > 1) return 'the price book has two items of that name'
  const priced = lines.flatMap((line) =>
    line.unit === null ? [] : [{ line, unit: line.unit, size: line.size }],
  )
  if (!per) {
    const [one, another] = priced
    if (one && !another) return one
    return priced.length === 0
      ? 'the list doesn’t say what it is sold by, and it has no price yet'
      : `the list doesn’t say which: ${priced.map(perWords).join(', ')}`
  }
  const same = priced.find(({ unit, size }) => unit === per.unit && size === per.size)
  if (same) return same
  if (priced.length === 0 && only) return { line: only, unit: per.unit, size: per.size }
  return `sold here ${perWords(per)}; the price book has it ${priced.map(perWords).join(', ')}`
}

/** Holds the lines of a list against the book, one after another; done gives what came of them. */
export type Matching = {
  take: (line: ListLine) => void
  bad: (line: BadLine) => void
  done: () => ListOutcome
}

/**
 * Starts holding a list against the book. A line is found by its code, or by its exact words where the list or the book has no code for it.
 * The same line twice at one price counts once; at two prices neither is used.
 */
export function matchList(book: MatchBook): Matching {
  const byCode = indexed(book.lines, ({ code }) => codeKey(code))
  const byWords = indexed(book.lines, ({ words }) => wordsKey(words))
  const suppliers = new Map(book.suppliers.map(({ id, name }) => [wordsKey(name), id]))
  const matched = new Map<string, MatchedLine>()
  const atTwo = new Set<string>()
  const outcome: ListOutcome = {
    matched: [],
    bad: [],
    badCount: 0,
    unknown: [],
    unknownCount: 0,
    repeated: 0,
  }

  const bad = (line: BadLine) => {
    outcome.badCount += 1
    if (outcome.bad.length < mostShown) outcome.bad.push(line)
  }
  const spoilt = ({ line, code, words }: ListLine, reason: string) =>
    bad({
      line,
      text: [code, words]
        .filter((one) => one !== '')
        .join(' · ')
        .slice(0, 80),
      reason,
    })
  const unknown = ({ line, code, words }: ListLine) => {
    outcome.unknownCount += 1
    if (outcome.unknown.length < mostShown)
      outcome.unknown.push({ line, text: `${code} ${words}`.trim().slice(0, 80) })
  }
  const supplierOf = ({ supplier }: ListLine): number | null | undefined => {
    if (book.supplierId !== null) return book.supplierId
    return supplier === '' ? null : suppliers.get(wordsKey(supplier))
  }
  const linesFor = (line: ListLine): BookLine[] => {
    const supplierId = supplierOf(line)
    if (supplierId === undefined) return []
    const coded = line.code === '' ? undefined : byCode.get(by(supplierId, codeKey(line.code)))
    const worded = byWords.get(by(supplierId, wordsKey(line.words)))
    return coded ?? worded?.filter(({ code }) => code === '' || line.code === '') ?? []
  }
  const twice = (key: string, first: MatchedLine, line: ListLine) => {
    if (first.pence === line.pence) outcome.repeated += 1
    else {
      if (!atTwo.has(key))
        spoilt({ ...line, line: first.line }, `it stands on line ${line.line} too, at another price`)
      atTwo.add(key)
      spoilt(line, `it stands on line ${first.line} too, at another price`)
    }
  }
  return {
    bad,
    take: (line) => {
      const found = linesFor(line)
      if (found.length === 0) return unknown(line)
      const picked = pick(found, line)
      if (typeof picked === 'string') return spoilt(line, picked)
      const { itemId, supplierId } = picked.line
      const key = `${itemId}/${supplierId}/${picked.unit}/${picked.size}`
      const first = matched.get(key)
      if (first) return twice(key, first, line)
      const { pence, rounded } = line
      matched.set(key, {
        line: line.line,
        itemId,
        supplierId,
        unit: picked.unit,
        size: picked.size,
        pence,
        rounded,
      })
    },
    done: () => ({
      ...outcome,
      bad: [...outcome.bad].sort((a, b) => a.line - b.line),
      matched: [...matched].flatMap(([key, line]) => (atTwo.has(key) ? [] : [line])),
    }),
  }
}
