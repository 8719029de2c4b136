import type { Design } from '../gate/designModel.ts'
import type { Figure } from '../gate/figures.ts'
import type { LeafName } from '../gate/leaf.ts'
import { figureKind, type FigureKind } from './figureKind.ts'
import { figureName } from './figureNames.ts'
import { bothLeaves } from './leafWords.ts'
import { numberRuns } from './pieceNames.ts'

/** One result of an entry: for which places, the numbers put in that others of the entry don't share, and what it came to. */
export type EntryRow = { places: string; inputs: [string, number][]; value: number }

/**
 * Figures that are worked alike: one formula, one source, one unit. shared are the numbers put in that they all have; rows what each came
 * to, those that are the same in every number said once. ids are the figures it stands for.
 */
export type FigureEntry = {
  kind: string
  name: string
  formula: string
  source: string
  unit: string
  shared: [string, number][]
  rows: EntryRow[]
  ids: string[]
}

type Known = FigureKind & { id: string; figure: Figure }

/** Things in the order they came, by what they have in common. */
function grouped<T>(all: readonly T[], keyOf: (one: T) => string): T[][] {
  const groups = new Map<string, T[]>()
  for (const one of all) {
    const key = keyOf(one)
    const known = groups.get(key)
    if (known) known.push(one)
    else groups.set(key, [one])
  }
  return [...groups.values()]
}

/** 'boards 2 to 8', 'lower and upper', '' where there is but one of the kind. */
function placeWords(places: FigureKind['place'][]): string {
  const there = places.filter((place) => place !== null)
  return grouped(there, ({ noun }) => noun)
    .map((same) => {
      const noun = same[0]?.noun ?? ''
      const numbers = same.flatMap(({ number }) => (number === null ? [] : [number]))
      if (numbers.length === 0) return noun
      return `${noun.replace(/fixing$/, '')}${numbers.length > 1 && !noun.endsWith('fixing') ? 's' : ''} ${numberRuns(numbers)}`.trim()
    })
    .join(', ')
}

/** Places by leaf; on a single leaf, or where the whole entry is said of both, without its name. */
function whose(known: Known[], leaves: readonly LeafName[], together: boolean): string {
  const byLeaf = grouped(known, ({ leaf }) => leaf).map((same) => ({
    leaf: same[0]?.leaf ?? 'leaf',
    words: placeWords(same.map(({ place }) => place)),
  }))
  const [first, second] = byLeaf
  if (!first) return ''
  if (leaves.length < 2 || together || first.leaf === 'leaf') return first.words
  const join = (leaf: string, words: string) => (words === '' ? leaf : `${leaf}, ${words}`)
  if (second && first.words === second.words) return join(bothLeaves(leaves), first.words)
  return byLeaf.map(({ leaf, words }) => join(leaf, words)).join('; ')
}

const entriesOf = (known: Known): [string, number][] => Object.entries(known.figure.inputs)

function entryOf(known: Known[], leaves: readonly LeafName[]): FigureEntry | undefined {
  const [first] = known
  if (!first) return undefined
  const shared = entriesOf(first).filter(([name, value]) =>
    known.every(({ figure }) => figure.inputs[name] === value),
  )
  const rows = grouped(known, ({ figure }) => JSON.stringify([figure.value, figure.inputs]))
  const both = rows.map((row) => {
    const byLeaf = grouped(row, ({ leaf }) => leaf).map((same) => placeWords(same.map(({ place }) => place)))
    return byLeaf.length === 2 && byLeaf[0] === byLeaf[1]
  })
  const together = leaves.length > 1 && both.every((is) => is)
  const { formula, source, unit } = first.figure
  return {
    kind: first.kind,
    name: together ? `${figureName(first.kind)}, ${bothLeaves(leaves)}` : figureName(first.kind),
    formula,
    source,
    unit,
    shared,
    rows: rows.map((row) => ({
      places: whose(row, leaves, together),
      inputs: row[0] ? entriesOf(row[0]).filter(([name]) => !shared.some(([known]) => known === name)) : [],
      value: row[0]?.figure.value ?? 0,
    })),
    ids: known.map(({ id }) => id),
  }
}

/** Every worked figure of a design, those that are worked alike in one entry, in the order they were worked. */
export function figureEntries(design: Design): FigureEntry[] {
  const leaves = design.leaves.map(({ name }) => name)
  const known = Object.entries(design.figures).map(([id, figure]): Known => ({
    id,
    figure,
    ...figureKind(design, id),
  }))
  const alike = ({ kind, figure }: Known): string =>
    JSON.stringify([kind, figure.formula, figure.source, figure.unit, Object.keys(figure.inputs)])
  return grouped(known, alike).flatMap((same) => entryOf(same, leaves) ?? [])
}
