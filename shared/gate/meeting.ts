import { geometry, commonPractice, workshopSetting, type Figure, type Figures } from './figures.ts'
import type { LeafName } from './leaf.ts'
import type { TopLine } from './topShape.ts'
import type { GateSpec } from './spec.ts'
import { figure } from './worked.ts'

/** How far a strip or rebate at the meeting of a pair laps unless said, mm: common practice. */
export const standardLap = 20

/** How far a pair's strip or rebate laps, mm. */
export const lapOf = ({ meeting }: Pick<GateSpec, 'meeting'>): number => meeting?.lap ?? standardLap

/** How the leaves of a pair meet; undefined on one leaf. */
export const meetingEdgeOf = ({ leaves, meeting }: GateSpec): 'square' | 'rebated' | 'strip' | undefined =>
  leaves === 2 ? (meeting?.edge ?? 'square') : undefined

/** The side that a gate opens to. There the leaf that opens first laps over the other, so that it comes away freely. */
export const openingSide = ({ opens }: Pick<GateSpec, 'opens'>): 'face' | 'back' =>
  opens === 'to-face' ? 'face' : 'back'

/**
 * How far the half of a leaf's meeting edge on the opening side stands past the leaf's width, mm. Faces of a rebated pair come flush, so what
 * the first leaf laps over is cut back on the second: lap, −lap; 0 for any other leaf or edge.
 */
export function lapPast(spec: GateSpec, name: LeafName): number {
  if (meetingEdgeOf(spec) !== 'rebated') return 0
  return name === 'first leaf' ? lapOf(spec) : name === 'second leaf' ? -lapOf(spec) : 0
}

/** What the timber of a leaf's meeting edge is wider for its lap, mm: only the first leaf's is. */
export const lapAdded = (spec: GateSpec, name: LeafName): number => Math.max(0, lapPast(spec, name))

/** Height of the top over a lap, mm: a curve runs on over the other leaf, a rake turns down again past the meeting and is held level there. */
export const lapHead = ({ top, width }: { top: TopLine; width: number }, x: number): number =>
  top.heightAt(top.shape === 'raked' ? Math.min(x, width) : x)

const lapFigure = (spec: GateSpec): Figure =>
  figure(lapOf(spec), 'mm', {
    formula: spec.meeting?.lap === undefined ? 'usual lap' : 'as entered',
    inputs: { lap: lapOf(spec) },
    source: spec.meeting?.lap === undefined ? commonPractice : workshopSetting,
  })

/** The figures of a pair's meeting: its lap, and the first leaf's width with it or the strip's width. leafWidth in mm. */
export function meetingFigures(spec: GateSpec, leafWidth: number): Figures {
  const edge = meetingEdgeOf(spec)
  if (edge === undefined || edge === 'square') return {}
  const [lap, gap] = [lapOf(spec), spec.size.meetingGap ?? 0]
  return edge === 'rebated'
    ? {
        'meeting.lap': lapFigure(spec),
        'meeting.widthWithLap': figure(leafWidth + lap, 'mm', {
          formula: 'leaf width + lap, on the leaf that opens first',
          inputs: { 'leaf width': leafWidth, lap },
          source: geometry,
        }),
      }
    : {
        'meeting.lap': lapFigure(spec),
        'meeting.stripWidth': figure(2 * lap + gap, 'mm', {
          formula: '2 × lap + meeting gap',
          inputs: { lap, 'meeting gap': gap },
          source: geometry,
        }),
      }
}
