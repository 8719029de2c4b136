import type { Problem } from '../problem.ts'
import type { DraftSpec, GateSpec } from './spec.ts'

/**
 * What the rules work out and the drawings show, but no form asks for and no paper prints yet. Refused by name where a spec comes
 * in, since a card made in part would be a wrong card. Each line goes when its form and paper come.
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
