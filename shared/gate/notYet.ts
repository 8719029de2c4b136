import type { Problem } from '../problem.ts'
import type { DraftSpec, GateSpec } from './spec.ts'

/**
 * What the rules can't work out yet. Refused by name, since a gate worked out in part would be a wrong gate.
 * Each line goes when its rule comes.
 */
export function notYet(spec: GateSpec | DraftSpec): Problem[] {
  const { construction, leaves, size, top, braces, boards } = spec
  const lines: [boolean, string, string, string][] = [
    [
      construction === 'framed-ledged-braced',
      'construction',
      'framed gates',
      'ledged or ledged-braced is accepted',
    ],
    [spec.frame !== undefined, 'frame', 'framed gates', 'leave it out'],
    [leaves === 2, 'leaves', 'pairs', '1 is accepted'],
    [size.from !== 'leaf', 'size.from', 'sizes from an opening', 'leaf is accepted'],
    [top.shape !== 'level', 'top.shape', `a ${top.shape} top`, 'level is accepted'],
    [braces?.ends === 'notched', 'braces.ends', 'notched ends', 'flush is accepted'],
    [boards.gap === 'auto', 'boards.gap', 'a gap worked out from the climate', 'a length in mm is accepted'],
    [spec.stable !== undefined, 'stable', 'stable doors', 'leave it out'],
    [spec.foot === 'follows-ground', 'foot', 'a foot that follows the ground', 'level is accepted'],
  ]
  return lines.flatMap(([refused, field, what, accepted]) =>
    refused ? [{ code: 'not-yet', field, message: `not yet: ${what}; ${accepted}` }] : [],
  )
}
