import { textOf, watchWriting, type Writing } from '../../shared/spreadsheet/encoding.ts'
import { lookAt, readList, type Look } from '../../shared/spreadsheet/list.ts'
import type { ListLine } from '../../shared/spreadsheet/listLine.ts'
import type { BadLine } from '../../shared/spreadsheet/rows.ts'
import type { Delimiter } from '../../shared/spreadsheet/delimiter.ts'

/** Letters of windows-1252 that aren't their own number, of those the tests use. */
const western: Record<string, number> = { '€': 0x80, '’': 0x92, '–': 0x96 }

/** A text's bytes, as a spreadsheet of a machine set to that writing keeps them; marked: with the writing's mark first. */
export function bytesOf(text: string, writing: Writing, marked: boolean): Uint8Array {
  const all = marked ? `\ufeff${text}` : text
  if (writing === 'utf-8') return new TextEncoder().encode(all)
  if (writing === 'windows-1252')
    return Uint8Array.from(text, (letter) => western[letter] ?? letter.charCodeAt(0))
  const bytes = new Uint8Array(all.length * 2)
  const view = new DataView(bytes.buffer)
  for (let at = 0; at < all.length; at += 1)
    view.setUint16(at * 2, all.charCodeAt(at), writing === 'utf-16le')
  return bytes
}

export type ReadList = {
  writing: Writing
  look: Look
  lines: ListLine[]
  bad: BadLine[]
  gaveUp: string | undefined
}

/** Reads a whole list as the program does: writing, columns, lines, in pieces of `piece` bytes so that pieces cut letters and rows. */
export function readBytes(
  bytes: Uint8Array,
  { piece = 977, known = [], delimiter }: { piece?: number; known?: string[]; delimiter?: Delimiter } = {},
): ReadList {
  const pieces: Uint8Array[] = []
  for (let from = 0; from < bytes.length; from += piece) pieces.push(bytes.subarray(from, from + piece))
  const watch = watchWriting()
  for (const one of pieces) watch.feed(one)
  const writing = watch.end()
  const start = textOf(writing)(bytes.subarray(0, 65_536), bytes.length > 65_536)
  const look = lookAt(start, new Set(known), { whole: bytes.length <= 65_536, delimiter })
  const lines: ListLine[] = []
  const bad: BadLine[] = []
  const reader = readList(look, { line: (line) => lines.push(line), bad: (line) => bad.push(line) })
  const text = textOf(writing)
  pieces.every((one, index) => reader.feed(text(one, index < pieces.length - 1)))
  reader.end()
  return { writing, look, lines, bad, gaveUp: reader.gaveUp() }
}

export const readText = (text: string, how?: Parameters<typeof readBytes>[1]): ReadList =>
  readBytes(bytesOf(text, 'utf-8', false), how)
