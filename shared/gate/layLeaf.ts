import { layBoards } from './boards.ts'
import { layBraces } from './braces.ts'
import { isStop } from './checks.ts'
import { placeFixings } from './fixings.ts'
import { layFrame } from './frame.ts'
import { frameRoom } from './frameRoom.ts'
import type { Brace, Fixing, Leaf, Ledge } from './leaf.ts'
import type { LeafPlan } from './leafPlan.ts'
import { leafRoom } from './leafRoom.ts'
import { layLedges } from './ledges.ts'
import { lapAdded } from './meeting.ts'
import type { GateSpec } from './spec.ts'
import { topFigures } from './topShape.ts'
import { weatherFigure } from './weathering.ts'
import { gather, type Worked } from './worked.ts'

/** What both leaves of a pair have in common when they are of one size: the lap of a rebated meeting touches boards and frame only. */
type Common = {
  top: ReturnType<typeof topFigures>
  ledges: Worked<Ledge[]>
  braces: Worked<Brace[]>
  weathering: Worked<null>
  fixings: Worked<Fixing[]>
}

/** A leaf with its parts, or undefined where a stop among the checks leaves none. common: what a like leaf can take over. */
export type LaidLeaf = Worked<Leaf | undefined> & { common?: Common }

/** The top rail as the braces find it: one more beam above the ledges, its lower edge level. */
function railAsBeam(spec: GateSpec, plan: LeafPlan): Ledge[] {
  if (!spec.frame) return []
  const { shoulder, stileWidth, railLower } = frameRoom(spec.frame, plan)
  const { tenon, topRail } = spec.frame
  return [
    {
      name: 'top',
      y: railLower + topRail.width / 2,
      x: stileWidth - tenon,
      length: shoulder + 2 * tenon,
      shortLength: shoulder,
      section: topRail,
    },
  ]
}

/** How far each ledge is weathered. */
const weathered = (spec: GateSpec, ledges: Ledge[]): Worked<null> => ({
  value: null,
  figures: Object.fromEntries(
    ledges.flatMap((ledge) => {
      const made = weatherFigure(spec, ledge)
      return made ? [[`ledge.${ledge.name}.weatherDrop`, made]] : []
    }),
  ),
  checks: [],
})

const ended = (parts: Worked<unknown>[], { prefix }: LeafPlan): LaidLeaf => ({
  value: undefined,
  ...gather(parts, prefix),
})

type Laying = { gap: number; like?: Common | undefined }

/**
 * Every part of one leaf: frame, boards, ledges, braces and the fixings between them. gap in mm. like: what was worked out for a leaf of the same
 * size, top and foot, so that a pair's second leaf isn't worked out twice. Ids of figures come with the leaf's prefix.
 */
export function layLeaf(spec: GateSpec, plan: LeafPlan, { gap, like }: Laying): LaidLeaf {
  const room = leafRoom(spec, plan)
  const frame = spec.frame ? layFrame(spec, spec.frame, plan) : { value: [], figures: {}, checks: [] }
  // Boards and ledges between stiles that leave no room would be nonsense, so the list of what's wrong ends here.
  if (frame.checks.some((check) => check.id !== 'frame-thickness' && isStop(check)))
    return ended([frame], plan)
  const boards = layBoards(spec, room.boards, { gap, lap: spec.frame ? 0 : lapAdded(spec, plan.name) })
  const ledges = like?.ledges ?? layLedges(spec, room.ledges)
  const braces = like?.braces ?? layBraces(spec, [...ledges.value, ...railAsBeam(spec, plan)])
  const top = like?.top ?? topFigures(spec.top, plan.top, plan)
  const before = [frame, top, boards, ledges, braces]
  if ([...boards.checks, ...ledges.checks].some(isStop)) return ended(before, plan)
  const parts = { boards: boards.value, ledges: ledges.value, braces: braces.value }
  const fixings = like?.fixings ?? placeFixings(spec, parts)
  const weathering = like?.weathering ?? weathered(spec, ledges.value)
  const { figures, checks } = gather([...before, weathering, fixings], plan.prefix)
  if (checks.some(isStop)) return { value: undefined, figures, checks }
  const leaf: Leaf = {
    name: plan.name,
    width: plan.width,
    height: plan.height,
    ...parts,
    frame: frame.value,
    fixings: fixings.value,
  }
  return { value: leaf, figures, checks, common: { top, ledges, braces, weathering, fixings } }
}
