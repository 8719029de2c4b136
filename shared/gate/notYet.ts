import type { Problem } from '../problem.ts'
import type { DraftSpec, GateSpec } from './spec.ts'

/**
 * What the rules can't work out yet. Refused by name, since a gate worked out in part would be a wrong gate.
 * Each line goes when its rule comes.
 */
export function notYet(spec: GateSpec | DraftSpec): Problem[] {
  const out: Problem[] = []
  const refuse = (when: boolean, field: string, what: string, accepted: string) => {
    if (when) out.push({ code: 'not-yet', field, message: `not yet: ${what}; ${accepted}` })
  }
  refuse(
    spec.construction === 'framed-ledged-braced',
    'construction',
    'framed gates',
    'ledged or ledged-braced is accepted',
  )
  refuse(spec.frame !== undefined, 'frame', 'framed gates', 'leave it out')
  refuse(spec.leaves === 2, 'leaves', 'pairs', '1 is accepted')
  refuse(spec.size.from !== 'leaf', 'size.from', 'sizes from an opening', 'leaf is accepted')
  refuse(spec.top.shape !== 'level', 'top.shape', `a ${spec.top.shape} top`, 'level is accepted')
  refuse(spec.braces?.ends === 'notched', 'braces.ends', 'notched ends', 'flush is accepted')
  refuse(
    spec.boards.gap === 'auto',
    'boards.gap',
    'a gap worked out from the climate',
    'a length in mm is accepted',
  )
  refuse(spec.stable !== undefined, 'stable', 'stable doors', 'leave it out')
  refuse(spec.foot === 'follows-ground', 'foot', 'a foot that follows the ground', 'level is accepted')
  return out
}
