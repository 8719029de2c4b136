import type { CutRow } from '../cutting/cutList.ts'
import type { LeafName } from '../gate/leaf.ts'
import { bothLeaves } from './leafWords.ts'

const leafNames: LeafName[] = ['first leaf', 'second leaf', 'lower half', 'upper half']

/** '1, 3 to 6, 9'. */
export function numberRuns(numbers: number[]): string {
  const runs: [number, number][] = []
  for (const number of [...numbers].sort((a, b) => a - b)) {
    const last = runs.at(-1)
    if (last && last[1] === number - 1) last[1] = number
    else runs.push([number, number])
  }
  return runs
    .map(([from, to]) =>
      from === to ? String(from) : to === from + 1 ? `${from}, ${to}` : `${from} to ${to}`,
    )
    .join(', ')
}

/** Boards by their numbers; all of a leaf's boards are 'boards'. */
function boardWords(numbers: number[], all: number): string {
  if (numbers.length === all) return all === 1 ? 'board' : 'boards'
  return `${numbers.length === 1 ? 'board' : 'boards'} ${numberRuns(numbers)}`
}

/** Pieces of one leaf: 'ledges: bottom, top', 'lower brace', 'boards 1, 9'. */
function partWords(parts: string[], all: number): string {
  const numbers = parts.flatMap((part) => (part.startsWith('board ') ? [Number(part.slice(6))] : []))
  if (numbers.length === parts.length) return boardWords(numbers, all)
  const [first = ''] = parts
  if (parts.length === 1) return first.replace(/^single /, '')
  const kind = first.split(' ').at(-1) ?? ''
  if (!parts.every((part) => part.endsWith(` ${kind}`))) return parts.join(', ')
  return `${kind}s: ${parts.map((part) => part.slice(0, -kind.length - 1)).join(', ')}`
}

/** What a row of the cut list is made for: its pieces by leaf, said once where both leaves have the same. boards: how many each leaf has. */
export function pieceNames(
  { marks }: Pick<CutRow, 'marks'>,
  boards: Partial<Record<LeafName, number>>,
): string {
  const byLeaf = new Map<LeafName, string[]>()
  for (const mark of marks) {
    const leaf = leafNames.find((name) => mark.startsWith(`${name} `)) ?? 'leaf'
    const part = leaf === 'leaf' ? mark : mark.slice(leaf.length + 1)
    byLeaf.set(leaf, [...(byLeaf.get(leaf) ?? []), part])
  }
  const said = [...byLeaf].map(([leaf, parts]) => ({ leaf, words: partWords(parts, boards[leaf] ?? 0) }))
  const [first, second] = said
  if (!first) return ''
  if (second && first.words === second.words)
    return `${first.words}, ${bothLeaves([first.leaf, second.leaf])}`
  return said.map(({ leaf, words }) => (leaf === 'leaf' ? words : `${leaf}: ${words}`)).join('; ')
}
