import { fillingScale } from '../../shared/drawing/fitScale.ts'
import type { Drawing } from '../../shared/drawing/drawing.ts'
import { gateDrawings } from '../../shared/drawing/gateDrawings.ts'
import { layOut } from '../../shared/drawing/layOut.ts'
import { scaleBar } from '../../shared/drawing/scaleBar.ts'
import { parseSpec } from '../../shared/gate/parseSpec.ts'
import { design } from '../../shared/gate/design.ts'
import type { LengthUnit } from '../../shared/job/job.ts'
import type { VariedSpec } from './variedSpecs.ts'

/** Room of the large view and of the small ones on a laptop's screen, mm of the drawing's paper, and what the scale bar takes. */
const rooms = { large: { width: 230, height: 150 }, small: { width: 220, height: 270 } }
const barRoom = 6

/** One view as the screen lays it out: filling its room, with a scale bar. Gives how many lines, circles and words it has. */
function laidOut(drawing: Drawing, unit: LengthUnit, { width, height }: typeof rooms.large): number {
  const room = { width, height: height - barRoom }
  const laid = layOut(drawing, { ...room, scale: fillingScale(drawing, room) })
  const bar = scaleBar(laid.scale, unit, { x: 0.2, y: height - 0.3 })
  return laid.primitives.length + bar.length
}

/**
 * What one key in a size field sets going: the spec read, the whole gate worked out, its three views drawn and laid out for the
 * screen. Gives how many lines, circles and words are to be painted, 0 where the sizes typed make no gate.
 */
export function keystroke({ spec, unit }: VariedSpec): number {
  const read = parseSpec(spec)
  if (!read.ok) return 0
  const outcome = design(read.value)
  if (!outcome.made) return 0
  const { back, face, section } = gateDrawings(read.value, outcome.design, unit)
  return (
    laidOut(back, unit, rooms.large) + laidOut(face, unit, rooms.small) + laidOut(section, unit, rooms.small)
  )
}

/** The calculation alone: the spec read and the whole gate worked out. Gives how many figures it has, 0 where there is no gate. */
function workedOut({ spec }: VariedSpec): number {
  const read = parseSpec(spec)
  const outcome = read.ok ? design(read.value) : undefined
  return outcome?.made ? Object.keys(outcome.design.figures).length : 0
}

/** What is timed at a key: all that the screen needs, or the calculation alone. */
export type Work = 'screen' | 'design'

const works: Record<Work, (one: VariedSpec) => number> = { screen: keystroke, design: workedOut }

/** The gates with their last figure typed anew: each round changes width and height of every gate by a few mm. */
export function typedSpecs(gates: readonly VariedSpec[], count: number): VariedSpec[] {
  return Array.from({ length: count }, (_, key) => {
    const { spec, unit } = gates[key % gates.length] as VariedSpec
    const round = Math.floor(key / gates.length)
    if (spec.size.from !== 'leaf') return { spec, unit }
    const { width, height } = spec.size
    return {
      unit,
      spec: { ...spec, size: { ...spec.size, width: width + (round % 10), height: height + (round % 7) } },
    }
  })
}

/** Times in ms: of the very first keystroke, then of every one that made a gate; stopped counts those that made none. */
export type Keystrokes = { first: number; times: number[]; stopped: number }

/** Types count keys into the gates, after up to 300 that only warm up. Keys that made no gate are cheap, so they aren't timed. */
export function timeKeystrokes(
  gates: readonly VariedSpec[],
  count: number,
  work: Work = 'screen',
): Keystrokes {
  const timed = (one: VariedSpec): [number, number] => {
    const start = performance.now()
    const marks = works[work](one)
    return [performance.now() - start, marks]
  }
  const typed = typedSpecs(gates, count)
  const warmUp = typed.slice(0, Math.min(300, count)).map(timed)
  const made = typed.map(timed).filter(([, marks]) => marks > 0)
  return {
    first: warmUp[0]?.[0] ?? 0,
    times: made.map(([ms]) => ms),
    stopped: typed.length - made.length,
  }
}
