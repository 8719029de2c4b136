import type { FittingShape } from '../ironmongery/fitting.ts'
import type { Fill, Mark } from './drawing.ts'
import type { PlacedLeaf } from './placeLeaves.ts'

const fillOf: Record<FittingShape['part'], Fill> = {
  strap: 'metal',
  pin: 'ink',
  plate: 'metal',
  'post plate': 'metal',
  case: 'metal',
  keyhole: 'ink',
  rod: 'metal',
}

/** Ironmongery on one side of a leaf where it goes, in leaf coordinates; a keyhole shows on the other side as well. */
export const fittingMarks = ({ fittings }: PlacedLeaf, view: 'face' | 'back'): Mark[] =>
  fittings.flatMap(({ surface, shapes, kind }) =>
    shapes
      .filter(({ part }) => surface === view || part === 'keyhole')
      .map(({ part, outline }): Mark => ({
        kind: 'polygon',
        points: outline,
        fill: fillOf[part],
        pen: 'outline',
        part: kind,
      })),
  )

/** How far ironmongery on one side reaches past a leaf's hanging edge, mm: 0 where nothing does. */
export const pastHanging = ({ fittings }: PlacedLeaf, view: 'face' | 'back'): number =>
  fittings
    .filter(({ surface }) => surface === view)
    .flatMap(({ shapes }) => shapes.flatMap(({ outline }) => outline))
    .reduce((most, [x]) => Math.max(most, -x), 0)
