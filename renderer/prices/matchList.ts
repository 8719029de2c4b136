import type { Pence } from '../../shared/pricing/pence.ts'
import type { PriceUnit } from '../../shared/pricing/price.ts'
import { codeKey } from '../../shared/spreadsheet/columns.ts'
import type { ListLine } from '../../shared/spreadsheet/listLine.ts'
import type { BadLine } from '../../shared/spreadsheet/rows.ts'
import { fold } from './priceRows.ts'
import { pickLine, type BookLine } from './pickLine.ts'

/** What a list is held against: the book's lines, the suppliers by name, and whose list it is (null: as its own column says). */
export type MatchBook = {
  lines: BookLine[]
  suppliers: { id: number; name: string }[]
  supplierId: number | null
}

/** A line of a list with the line of the book that it prices. listed: the price as it stands in the list, hundredths; pence without the tax in it. */
export type MatchedLine = {
  line: number
  itemId: number
  supplierId: number | null
  unit: PriceUnit
  size: number | null
  listed: number
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

/**
 * Holds the lines of a list against the book, one after another; `done` gives what came of them. A line is found by its code, or by its
 * exact words where the list or the book has no code for it. The same line twice at one price counts once; at two prices neither
 * is used.
 */
export class ListMatching {
  readonly #supplierId: number | null
  readonly #byCode: Map<string, BookLine[]>
  readonly #byWords: Map<string, BookLine[]>
  readonly #suppliers: Map<string, number>
  readonly #matched = new Map<string, MatchedLine>()
  readonly #atTwoPrices = new Set<string>()
  readonly #bad: BadLine[] = []
  readonly #unknown: { line: number; text: string }[] = []
  #badCount = 0
  #unknownCount = 0
  #repeated = 0

  constructor(book: MatchBook) {
    this.#supplierId = book.supplierId
    this.#byCode = indexed(book.lines, ({ code }) => codeKey(code))
    this.#byWords = indexed(book.lines, ({ words }) => wordsKey(words))
    this.#suppliers = new Map(book.suppliers.map(({ id, name }) => [wordsKey(name), id]))
  }

  /** Puts down a line that can't be used. */
  bad(line: BadLine): void {
    this.#badCount += 1
    if (this.#bad.length < mostShown) this.#bad.push(line)
  }

  /** Holds one line against the book. */
  take(line: ListLine): void {
    const found = this.#linesFor(line)
    if (found.length === 0) return this.#put(line)
    const picked = pickLine(found, line)
    if (typeof picked === 'string') return this.#spoilt(line, picked)
    const { itemId, supplierId } = picked.line
    const key = `${itemId}/${supplierId}/${picked.unit}/${picked.size}`
    const first = this.#matched.get(key)
    if (first) return this.#twice(key, first, line)
    const { listed, pence, rounded } = line
    const { unit, size } = picked
    this.#matched.set(key, { line: line.line, itemId, supplierId, unit, size, listed, pence, rounded })
  }

  done(): ListOutcome {
    return {
      matched: [...this.#matched].flatMap(([key, line]) => (this.#atTwoPrices.has(key) ? [] : [line])),
      bad: [...this.#bad].sort((a, b) => a.line - b.line),
      badCount: this.#badCount,
      unknown: this.#unknown,
      unknownCount: this.#unknownCount,
      repeated: this.#repeated,
    }
  }

  #supplierOf({ supplier }: ListLine): number | null | undefined {
    if (this.#supplierId !== null) return this.#supplierId
    return supplier === '' ? null : this.#suppliers.get(wordsKey(supplier))
  }

  #linesFor(line: ListLine): BookLine[] {
    const supplierId = this.#supplierOf(line)
    if (supplierId === undefined) return []
    const coded = line.code === '' ? undefined : this.#byCode.get(by(supplierId, codeKey(line.code)))
    const worded = this.#byWords.get(by(supplierId, wordsKey(line.words)))
    return coded ?? worded?.filter(({ code }) => code === '' || line.code === '') ?? []
  }

  #put({ line, code, words }: ListLine): void {
    this.#unknownCount += 1
    if (this.#unknown.length < mostShown)
      this.#unknown.push({ line, text: `${code} ${words}`.trim().slice(0, 80) })
  }

  #spoilt({ line, code, words }: ListLine, reason: string, onLine = line): void {
    const text = [code, words].filter((one) => one !== '').join(' · ')
    this.bad({ line: onLine, text: text.slice(0, 80), reason })
  }

  #twice(key: string, first: MatchedLine, line: ListLine): void {
    if (first.pence === line.pence) {
      this.#repeated += 1
      return
    }
    const also = (other: number) => `it stands on line ${other} too, at another price`
    if (!this.#atTwoPrices.has(key)) this.#spoilt(line, also(line.line), first.line)
    this.#atTwoPrices.add(key)
    this.#spoilt(line, also(first.line))
  }
}
