import type { Design } from '../gate/designModel.ts'
import type { GateSpec } from '../gate/spec.ts'
import { extraViews, type ExtraView } from './extraDrawings.ts'

/**
 * The further views that a gate has, in their order, told without drawing any: ground where it rises under the swing, notch where a brace
 * is notched, meeting on a pair, frameSection on a framed gate, ledgeSection where ledges are weathered, settingOut under a shaped top. Every gate comes apart and swings.
 */
export function viewsOf(spec: GateSpec, { leaves, swing }: Pick<Design, 'leaves' | 'swing'>): ExtraView[] {
  const has: Record<ExtraView, boolean> = {
    exploded: true,
    swing: true,
    ground: spec.site !== undefined && swing.some(({ ground }) => ground !== null),
    notch: Boolean(leaves[0]?.braces[0]?.notch),
    meeting: leaves.length > 1 && spec.leaves === 2,
    frameSection: spec.frame !== undefined,
    ledgeSection: (spec.ledges.weather ?? 0) > 0,
    settingOut: spec.top.shape !== 'level',
  }
  return extraViews.filter((view) => has[view])
}
