import { lengthTolerance } from '../geometry/point.ts'
import { writeShortMm } from '../units/writeLength.ts'
import type { Check } from './checks.ts'
import { lapOf, meetingEdgeOf, openingSide } from './meeting.ts'
import type { GateSpec } from './spec.ts'

/**
 * Ledges that run in under the strip or lap of a pair's meeting. Both stand on the side that the gate opens to, so only a pair that
 * opens to its back has its ledges there; in a frame the strip lies on the stiles, clear of the ledges.
 */
export function meetingChecks(spec: GateSpec): Check[] {
  const edge = meetingEdgeOf(spec)
  const { closingInset } = spec.ledges
  const lap = lapOf(spec)
  const clear = openingSide(spec) === 'face' || spec.frame || closingInset >= lap - lengthTolerance
  if (edge === undefined || edge === 'square' || clear) return []
  const [inset, laps] = [writeShortMm(closingInset), writeShortMm(lap)]
  const found: Pick<Check, 'level' | 'figures' | 'field'> = {
    level: 'caution',
    figures: ['meeting.lap'],
    field: 'ledges.closingInset',
  }
  if (edge === 'strip')
    return [
      {
        id: 'ledge-under-strip',
        ...found,
        message: `The cover strip laps ${laps} mm onto each leaf and the ledges stop ${inset} mm from its edge: they run in under the strip.`,
        remedy: `Make the closing inset ${laps} mm or more, or lessen the lap to ${inset} mm.`,
      },
    ]
  return [
    {
      id: 'ledge-under-lap',
      ...found,
      message: `The first leaf laps ${laps} mm over the second, whose ledges stop ${inset} mm from its edge: they stand over its rebate.`,
      remedy: `Make the closing inset ${laps} mm or more, or lessen the lap to ${inset} mm.`,
    },
  ]
}
