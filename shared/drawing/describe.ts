import type { Leaf } from '../gate/leaf.ts'
import type { GateSpec } from '../gate/spec.ts'
import type { FigureText } from './figureText.ts'
import type { Placing } from './placeLeaves.ts'

const kindWords = {
  pair: 'a pair, the first leaf',
  stable: 'a stable door, the lower half',
  single: 'a leaf',
}

const topWords = ({ top }: GateSpec): string[] =>
  top.shape === 'level'
    ? []
    : [top.shape === 'raked' ? `top raked, high at the ${top.high} side` : `top ${top.shape}`]

/** What is seen of a gate's back, in a sentence. */
export function describeBack(spec: GateSpec, { kind, leaves }: Placing, figures: FigureText): string {
  const leaf = leaves[0]?.leaf
  if (!leaf) return ''
  const unit = figures.unit === 'mm' ? ' mm' : ''
  const braces = leaf.braces.map((brace) => `${brace.name} brace at ${brace.angle.toFixed(1)} degrees`)
  return [
    `Back of ${kindWords[kind]} ${figures.write(leaf.width)} wide and ${figures.write(leaf.height)}${unit} high`,
    `hinges at the ${spec.hung === 'left' ? 'right' : 'left'} as it lies on the bench`,
    ...topWords(spec),
    ...(leaf.frame.length > 0 ? ['framed'] : []),
    `${leaf.boards.length} boards`,
    `${leaf.ledges.length} ${leaf.ledges.length === 1 ? 'ledge' : 'ledges'}`,
    ...(braces.length > 0 ? [...braces, 'each brace with its foot at the hanging side'] : ['no brace']),
  ].join(', ')
}

function rippedWords(leaf: Leaf, figures: FigureText): string {
  const ripped = leaf.boards.flatMap((board, i) =>
    board.ripped ? [`board ${i + 1} ripped to ${figures.write(board.width)}`] : [],
  )
  return ripped.length > 0 ? ripped.join(', ') : 'no board ripped'
}

/** What is seen of a gate's face, in a sentence. */
export function describeFace(spec: GateSpec, { kind, leaves }: Placing, figures: FigureText): string {
  const leaf = leaves[0]?.leaf
  if (!leaf) return ''
  const whose = kind === 'single' ? 'the leaf' : kindWords[kind]
  return `Face of ${whose}: ${leaf.boards.length} boards, hinges at the ${spec.hung}, ${rippedWords(leaf, figures)}`
}
