import type { Fitting } from '../../ironmongery/fitting.ts'
import type { HangingLeaf } from '../leaf.ts'
import { both, drillSize, hanging, mm, sentences, type Step, type StepSource } from './step.ts'

/** A leaf's name before what is said of it, where there is more than one. */
export const named = ({ leaves }: StepSource, name: HangingLeaf['name']): string =>
  leaves.length > 1 ? `${name[0]?.toUpperCase()}${name.slice(1)}: ` : ''

/** How one hinge goes on: its height, its line and its holes. */
function hingeText(hinge: Fitting): string {
  const on = hinge.on === '' ? '' : ` on the ${hinge.on}`
  return `${both(hinge.height)} from the foot${on}`
}

const drillWords = ({ drillings }: Fitting): string =>
  drillings
    .map(({ what, count, size, depth }) => {
      const deep = depth === null ? 'right through' : `no deeper than ${mm(depth)}`
      return `${count} ${what}${count === 1 ? '' : 's'} ${drillSize(size)}, ${deep}`
    })
    .join('; ')

/** Fixing the hinges to the leaf, or where to when none is listed. */
export function hingesStep(source: StepSource): Step {
  const { leaves, fittings } = source
  const text = leaves.map((leaf) => {
    const hinges = fittings.filter((one) => one.leaf === leaf.name && one.kind === 'hinge')
    const first = hinges[0]
    if (!first)
      return `${named(source, leaf.name)}set the hinges at ${leaf.hinges.map(({ y }) => both(y)).join(' and ')} from the foot, on the lines of the ledges.`
    const drill = drillWords(first)
    return sentences(
      `${named(source, leaf.name)}${first.name}, on the ${first.surface}: ${hinges.map(hingeText).join('; ')}.`,
      drill === '' ? '' : `Each: ${drill}.`,
    )
  })
  return hanging(
    'Fix the hinges to the leaf',
    sentences(...text, 'Straps square to the hanging edge, eyes in one line. Bolts before screws.'),
    ['Clamp the leaf before drilling; it is heavy on one edge.'],
  )
}

function pieceText(source: StepSource, piece: Fitting): string {
  const drill = drillWords(piece)
  const edge = `${piece.surface}, ${piece.side} edge`
  return sentences(
    `${named(source, piece.leaf)}${piece.name}: middle ${both(piece.height)} from the foot, ${edge}.`,
    drill === '' ? '' : `Drill ${drill}.`,
  )
}

/** Latch, lock, handle and the like; nothing where none is listed. */
export function latchSteps(source: StepSource): Step[] {
  const pieces = source.fittings.filter(({ kind }) => kind !== 'hinge' && kind !== 'bolt')
  if (pieces.length === 0) return []
  const keeps = source.spec.leaves === 2 ? 'on the second leaf' : 'on the post'
  return [
    hanging(
      'Fit latch and lock',
      sentences(
        ...pieces.map((piece) => pieceText(source, piece)),
        `Set the keeps ${keeps} last, with the gate shut, and leave room for it to drop and swell.`,
      ),
    ),
  ]
}

/** '22 mm, 93 mm deep' for a bolt's socket, with its place across where it has one; nothing for a bolt that isn't listed. */
function socketText({ socket, socketPlace: at }: Fitting): string[] {
  if (socket === null) return []
  if (!at) return [mm(socket)]
  const across = at.across === null ? '' : ` ${both(at.across)} from the hanging edge`
  return [`${mm(socket)}, ${mm(at.depth)} deep${across}`]
}

/** Bolts and their sockets; nothing where none is listed. */
export function boltSteps(source: StepSource): Step[] {
  const bolts = source.fittings.filter(({ kind }) => kind === 'bolt')
  if (bolts.length === 0) return []
  const sockets = [...new Set(bolts.flatMap(socketText))]
  const socket =
    sockets.length === 0
      ? ''
      : `With the leaf shut, mark where each rod meets ground, head or post and drill ${sockets.join('; ')}; let a ground socket drain.`
  const packed = source.spec.frame ? '' : 'Where a bolt crosses from ledge to boards, pack it out level.'
  return [
    hanging('Fit the bolts', sentences(...bolts.map((bolt) => pieceText(source, bolt)), packed, socket), [
      'A socket in the ground is a hole in the ground too: services first. Eye protection when drilling stone or concrete.',
    ]),
  ]
}
