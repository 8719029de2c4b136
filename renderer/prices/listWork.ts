import type { Columns, Layout } from '../../shared/spreadsheet/columns.ts'
import type { Decimal } from '../../shared/spreadsheet/amount.ts'
import type { Delimiter } from '../../shared/spreadsheet/delimiter.ts'
import {
  markedWriting,
  notAList,
  textOf,
  watchWriting,
  type Writing,
} from '../../shared/spreadsheet/encoding.ts'
import { lookAt, readList, type Look } from '../../shared/spreadsheet/list.ts'
import { ListMatching, type ListOutcome, type MatchBook } from './matchList.ts'

/** How a list is first seen: its writing, and what its start looks like. */
export type SeenList = Look & { writing: Writing }

/** What is settled about a list before it is read: the guess, or what the person put in its place. taxBp: the rate of tax in its prices, null for none. */
export type SettledList = {
  writing: Writing
  delimiter: Delimiter
  layout: Layout
  columns: Columns
  decimal: Decimal
  taxBp: number | null
}

/** What is asked of the reader of lists. known: the codes of the book, by `codeKey`. */
export type ListAsk =
  | { ask: 'look'; file: Blob; known: string[]; delimiter: Delimiter | null }
  | { ask: 'read'; file: Blob; settled: SettledList; book: MatchBook }

/** What it tells. share: how far it is, from 0 to 1. */
export type ListTold =
  | { told: 'seen'; list: SeenList }
  | { told: 'refused'; sentence: string }
  | { told: 'progress'; lines: number; share: number }
  | { told: 'read'; lines: number; outcome: ListOutcome }

/** Bytes taken at once: small enough to tell of the progress several times a second. */
const piece = 1 << 20
/** How much of the start is looked at. */
const startBytes = 1 << 18
/** Larger than any merchant's list: more than five million lines. */
const mostBytes = 300 * 1024 * 1024

async function writingOf(file: Blob, first: Uint8Array): Promise<Writing> {
  const marked = markedWriting(first)
  if (marked) return marked
  const watch = watchWriting()
  for (let at = 0; at < file.size; at += piece)
    watch.feed(new Uint8Array(await file.slice(at, at + piece).arrayBuffer()))
  return watch.end()
}

/** Looks at a list's start. Refused with a sentence where it is no list. */
export async function lookAtFile({
  file,
  known,
  delimiter,
}: Extract<ListAsk, { ask: 'look' }>): Promise<ListTold> {
  const first = new Uint8Array(await file.slice(0, startBytes).arrayBuffer())
  const refused =
    file.size > mostBytes ? 'This is far larger than any merchant’s list. Choose another.' : notAList(first)
  if (refused) return { told: 'refused', sentence: refused }
  const writing = await writingOf(file, first)
  const whole = file.size <= startBytes
  const text = textOf(writing)(first, !whole)
  const look = lookAt(text, new Set(known), { whole, delimiter: delimiter ?? undefined })
  if (look.rows.length === 0)
    return { told: 'refused', sentence: 'There isn’t a line in it that can be read. Choose another list.' }
  return { told: 'seen', list: { writing, ...look } }
}

/** Reads a whole list as it was settled and holds it against the book, telling how far it is on the way. */
export async function readFile(
  { file, settled, book }: Extract<ListAsk, { ask: 'read' }>,
  tell: (told: ListTold) => void,
): Promise<ListTold> {
  const matching = new ListMatching(book)
  const layout = {
    ...settled.layout,
    columns: settled.columns,
    decimal: settled.decimal,
    taxBp: settled.taxBp,
  }
  const reader = readList(
    { delimiter: settled.delimiter, layout },
    { line: (line) => matching.take(line), bad: (line) => matching.bad(line) },
  )
  const text = textOf(settled.writing)
  for (let at = 0; at < file.size; at += piece) {
    const bytes = new Uint8Array(await file.slice(at, at + piece).arrayBuffer())
    if (!reader.feed(text(bytes, at + piece < file.size))) break
    tell({ told: 'progress', lines: reader.lines(), share: Math.min(1, (at + piece) / file.size) })
  }
  reader.end()
  const gaveUp = reader.gaveUp()
  if (gaveUp !== undefined) return { told: 'refused', sentence: gaveUp }
  return { told: 'read', lines: reader.lines(), outcome: matching.done() }
}
