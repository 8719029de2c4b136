import type { Design } from '../shared/gate/designModel.ts'
import type { Hole } from '../shared/gate/holes.ts'
import { leafPrefix } from '../shared/gate/leafPrefix.ts'
import { capital } from './format.ts'
import { leafGroups, rowsOf, type ResultGroup } from './resultRows.ts'

/** What stands behind the holes: how far the point goes in, how much a fixing holds, and how the fixings are placed on each leaf. */
export const holeGroups = (design: Design, idOf: (hole: Hole, what: string) => string): ResultGroup[] => [
  ...design.holes.map((hole) => ({
    title: capital(`fixings through the ${hole.through}`),
    rows: rowsOf(design, [
      [idOf(hole, 'penetration'), 'point goes into the board'],
      [idOf(hole, 'root'), 'root of the thread'],
      [idOf(hole, 'gravity'), 'specific gravity of the board'],
      [idOf(hole, 'hold'), 'one holds against being pulled out'],
    ]),
  })),
  ...leafGroups(design, (leaf) => {
    const at = leafPrefix[leaf.name]
    return [
      {
        title: 'Places',
        part: 'fixings',
        rows: rowsOf(design, [
          [`${at}fixings.count`, 'fixings in all'],
          [`${at}fixings.ledge`, 'in the ledges'],
          [`${at}fixings.brace`, 'in the braces'],
          [`${at}fixings.fromJoint`, 'from a joint of the boards'],
          [`${at}fixings.fromEnd`, 'from an end'],
        ]),
      },
    ]
  }),
]
