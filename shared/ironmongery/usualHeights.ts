import { commonPractice, type Figure } from '../gate/figures.ts'
import type { Leaf } from '../gate/leaf.ts'
import type { GateSpec, Ironmongery } from '../gate/spec.ts'
import { figure } from '../gate/worked.ts'
import { topOver, type Rectangle } from './clearPlace.ts'
import { footAbove } from './allot.ts'
import { hingeLines } from './hingeLines.ts'
import { boltForm, boxOf } from './pieceSize.ts'

/** Height of the top of a lock rail above the ground, mm (3 ft 2 in). Source: Building Construction 5, 'Panelled doors' (chestofbooks). */
export const lockRailTop = 965

const lockRailSource =
  "Building Construction 5, 'Panelled doors' (chestofbooks reprint): top of lock rail 3 ft 2 in"

/** Clear room left between two pieces one above the other, mm: common practice. */
const apart = 30

const mm = (value: number, formula: string, inputs: Record<string, number>): Figure =>
  figure(value, 'mm', { formula, inputs, source: commonPractice })

const onLine = (name: string, y: number): Figure =>
  mm(y, `centre line of the ${name}`, { [`${name} from the foot`]: y })

/** The gap under the leaf as surveyed, mm; none when only the leaf's own size was given. */
const groundGap = (spec: GateSpec): number => (spec.size.from === 'opening' ? spec.size.groundGap : 0)

/** Heights for the middle of a lock, or of a latch without one, best first: the middle ledge, else with its top where a lock rail's is, else the top line. */
function lockHeights(spec: GateSpec, leaf: Leaf, height: number): Figure[] {
  const lines = hingeLines(leaf)
  const middle = lines.find(({ name }) => name === 'middle ledge')
  const gap = groundGap(spec) + footAbove(spec, leaf)
  const byRail = figure(lockRailTop - gap - height / 2, 'mm', {
    formula: 'top of a lock rail above the ground − foot above the ground − height of the piece / 2',
    inputs: {
      'top of a lock rail': lockRailTop,
      'foot above the ground': gap,
      'height of the piece': height,
    },
    source: lockRailSource,
  })
  const top = lines.at(-1)
  const low = top !== undefined && byRail.value + height / 2 > top.lower
  const onTop = top ? [onLine(top.name, top.y)] : []
  const first = middle ? [onLine(middle.name, middle.y)] : []
  return low ? [...first, ...onTop, byRail] : [...first, byRail, ...onTop]
}

/** Heights beside a piece that is there already: above it, then below it. */
function besideHeights(other: Rectangle, height: number): Figure[] {
  const [lower, upper] = [other.y, other.y + other.height]
  return [
    mm(upper + apart + height / 2, 'upper edge of the piece below + room + height / 2', {
      'upper edge of the piece below': upper,
      room: apart,
      height,
    }),
    mm(lower - apart - height / 2, 'lower edge of the piece above − room − height / 2', {
      'lower edge of the piece above': lower,
      room: apart,
      height,
    }),
  ]
}

function boltHeights(leaf: Leaf, piece: Ironmongery, at: Omit<Rectangle, 'y'>): Figure[] {
  const form = boltForm(piece)
  const { length, inputs } = { length: at.height, inputs: { 'length of the bolt': at.height } }
  if (form === 'drop') return [mm(length / 2, 'length of the bolt / 2, its lower end at the foot', inputs)]
  if (form === 'top') {
    const top = topOver(leaf, at.x, at.x + at.width)
    return [
      mm(top - length / 2, 'top over the bolt − length of the bolt / 2', {
        'top over the bolt': top,
        ...inputs,
      }),
    ]
  }
  const lines = hingeLines(leaf)
  return [...lines].reverse().map(({ name, y }) => onLine(name, y))
}

/**
 * Heights for the middle of a piece that has none entered, best first, each a worked figure. taken are the pieces that already lie at
 * its side of the leaf, lock first.
 */
export function usualHeights(
  { spec, leaf, piece }: { spec: GateSpec; leaf: Leaf; piece: Ironmongery },
  at: Omit<Rectangle, 'y'>,
  taken: readonly Rectangle[],
): Figure[] {
  const { height } = boxOf(piece)
  if (piece.kind === 'bolt') return boltHeights(leaf, piece, at)
  const beside = taken.flatMap((other) => besideHeights(other, height))
  const alone = lockHeights(spec, leaf, height)
  return piece.kind === 'lock' ? [...alone, ...beside] : [...beside, ...alone]
}
