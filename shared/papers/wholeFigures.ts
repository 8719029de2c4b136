import { figureText, type FigureText } from '../drawing/figureText.ts'
import type { HangingLeaf } from '../gate/leaf.ts'
import { braceFigures, edgeBoard, type CardFigure } from './cardFigures.ts'
import type { JobCardInput } from './jobCardInput.ts'
import { bothLeaves, capital, saidByLeaf } from './leafWords.ts'

type Gate = Pick<JobCardInput, 'spec' | 'design' | 'unit'>

/** 'Lower half: brace' where the leaves differ, 'Brace, both leaves' where they don't. */
const labelled = (label: string, who: string): string => {
  if (who === '') return label
  return who.startsWith('Both')
    ? `${label}, ${who.toLowerCase().replace(/^both (leaves|halves)$/, 'each')}`
    : `${who}: ${label.toLowerCase()}`
}

const withLabel = (who: string, figures: CardFigure[]): CardFigure[] =>
  figures.map((figure) => ({ ...figure, label: labelled(figure.label, who) }))

function sizeFigures({ design }: Gate, { write, other }: FigureText): CardFigure[] {
  return saidByLeaf(design.leaves, ({ width, height }) => [width, height]).map(({ who, leaf }) => {
    const size = (of: (mm: number) => string) => `${of(leaf.width)} × ${of(leaf.height)}`
    const label = who === '' ? 'Leaf' : who.startsWith('Both') ? 'Each leaf' : who
    return { label, value: size(write), second: size(other).replace(' mm ×', ' ×') }
  })
}

function boardFigures({ spec, design }: Gate, figures: FigureText): CardFigure[] {
  const edges = ({ boards }: HangingLeaf): CardFigure[] =>
    boards.flatMap((board, i) => (i === 0 || i === boards.length - 1 ? edgeBoard(board, i + 1, figures) : []))
  return saidByLeaf(design.leaves, (leaf) => [leaf.boards.length, edges(leaf)]).flatMap(({ who, leaf }) => [
    { label: labelled('Boards', who), value: String(leaf.boards.length), second: spec.boards.section.name },
    ...togetherWhereAlike(edges(leaf)),
  ])
}

function topFigure({ spec, design }: Gate, { write, other }: FigureText): CardFigure[] {
  const { top } = spec
  if (top.shape === 'level') return []
  if (top.shape === 'raked')
    return [{ label: 'Rake', value: write(top.rise), second: `${top.high} edge high` }]
  const radius = Object.entries(design.figures).find(([id]) => id.endsWith('top.radius'))?.[1]
  return radius
    ? [{ label: 'Radius of the top', value: write(radius.value), second: other(radius.value) }]
    : []
}

function frameFigure({ design }: Gate, { write, other }: FigureText): CardFigure[] {
  const rail = design.leaves[0]?.frame.find(({ name }) => name === 'top rail')
  return rail
    ? [{ label: 'Between shoulders', value: write(rail.shoulder), second: other(rail.shoulder) }]
    : []
}

function weightFigure({ design }: Gate): CardFigure[] {
  const masses = design.leaves.map(({ massKg }) => Math.round(massKg))
  const value = masses.every((mass) => mass === masses[0]) ? `${masses[0]} kg` : `${masses.join(' and ')} kg`
  const label = design.leaves.length > 1 ? 'Weight of each' : 'Weight'
  return [{ label, value, second: 'give or take a tenth' }]
}

/** Two edge boards ripped alike are one figure. */
function togetherWhereAlike([first, second, ...rest]: CardFigure[]): CardFigure[] {
  if (!first || !second || rest.length > 0 || first.value !== second.value)
    return [first, second, ...rest].filter((one) => one !== undefined)
  const [one, other] = [first, second].map(({ label }) => /^Rip board (\d+) to$/.exec(label)?.[1])
  return one && other ? [{ ...first, label: `Rip boards ${one}, ${other} to` }] : [first, second]
}

/** Most figures over a pair's drawing, which wants the sheet's width: what its notes and the list of hanging say as well gives way. */
const mostOverPair = 8

/** 'between long points' is said with a leaf's name before it, in a narrow column. */
const shortLabel = (figure: CardFigure): CardFigure => ({
  ...figure,
  label: figure.label.replace('between long points', 'Long points'),
})

/** The figures that page 1 of a whole gate's card sets large, those of both leaves said once. */
export function wholeFigures(gate: Gate): CardFigure[] {
  const { spec, design, unit } = gate
  const figures = figureText(unit)
  const together = bothLeaves(design.leaves.map(({ name }) => name))
  const hung = together === 'both leaves' ? 'First leaf hung' : 'Hung'
  const braces = saidByLeaf(design.leaves, (leaf) => braceFigures(leaf.braces, figures))
  const all = [
    ...sizeFigures(gate, figures),
    { label: hung, value: spec.hung, second: 'seen from the face' },
    ...boardFigures(gate, figures),
    ...frameFigure(gate, figures),
    ...braces.flatMap(({ who, value }) => withLabel(who, value.map(shortLabel))),
    ...topFigure(gate, figures),
    ...weightFigure(gate),
  ].map((figure) => ({ ...figure, label: capital(figure.label) }))
  return spec.leaves === 2 ? all.slice(0, mostOverPair) : all
}
