import { layBoards } from './boards.ts'
import { layBraces } from './braces.ts'
import { isStop } from './checks.ts'
import { placeFixings } from './fixings.ts'
import { layFrame } from './frame.ts'
import { frameRoom } from './frameRoom.ts'
import type { Leaf, Ledge } from './leaf.ts'
import type { LeafPlan } from './leafPlan.ts'
import { leafRoom } from './leafRoom.ts'
import { layLedges } from './ledges.ts'
import { lapAdded } from './meeting.ts'
import type { GateSpec } from './spec.ts'
import { topFigures } from './topShape.ts'
import { weatherFigure } from './weathering.ts'
import { gather, joined, type Worked } from './worked.ts'

/** A leaf with its parts, or undefined where a stop among the checks leaves none. */
export type LaidLeaf = Worked<Leaf | undefined>

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

/** Ids of a leaf's figures with its own prefix, in the figures and in the checks that name them. */
export function prefixed<T>(worked: Worked<T>, prefix: string): Worked<T> {
  if (prefix === '') return worked
  return {
    value: worked.value,
    figures: joined([worked.figures], prefix),
    checks: worked.checks.map((check) => ({
      ...check,
      figures: check.figures.map((id) => `${prefix}${id}`),
    })),
  }
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

const ended = (parts: Worked<unknown>[]): LaidLeaf => ({ value: undefined, ...gather(parts) })

/** Every part of one leaf: frame, boards, ledges, braces and the fixings between them. gap in mm. */
export function layLeaf(spec: GateSpec, plan: LeafPlan, gap: number): LaidLeaf {
  const room = leafRoom(spec, plan)
  const frame = spec.frame ? layFrame(spec, spec.frame, plan) : { value: [], figures: {}, checks: [] }
  // Boards and ledges between stiles that leave no room would be nonsense, so the list of what's wrong ends here.
  if (frame.checks.some((check) => check.id !== 'frame-thickness' && isStop(check))) return ended([frame])
  const boards = layBoards(spec, room.boards, { gap, lap: spec.frame ? 0 : lapAdded(spec, plan.name) })
  const ledges = layLedges(spec, room.ledges)
  const braces = layBraces(spec, [...ledges.value, ...railAsBeam(spec, plan)])
  const top = topFigures(spec.top, plan.top, plan)
  const before = [frame, top, boards, ledges, braces]
  if ([...boards.checks, ...ledges.checks].some(isStop)) return ended(before)
  const fixings = placeFixings(spec, { boards: boards.value, ledges: ledges.value, braces: braces.value })
  const { figures, checks } = gather([...before, weathered(spec, ledges.value), fixings])
  if (checks.some(isStop)) return { value: undefined, figures, checks }
  const leaf: Leaf = {
    name: plan.name,
    width: plan.width,
    height: plan.height,
    boards: boards.value,
    ledges: ledges.value,
    braces: braces.value,
    frame: frame.value,
    fixings: fixings.value,
  }
  return { value: leaf, figures, checks }
}
