import type { GateSpec } from '../gate/spec.ts'
import type { FigureText } from './figureText.ts'
import type { Placing } from './placeLeaves.ts'

/** What a shaped top is set out by: its rise, what it spans, a curve's radius. Nothing for a level one. */
function topNotes({ top }: GateSpec, { leaves }: Placing, figures: FigureText): string[] {
  const line = leaves.at(-1)?.plan.top
  if (top.shape === 'level' || !line) return []
  const rise = `rise ${figures.write(top.rise)} over ${figures.write(line.span)}`
  if (top.shape === 'raked') return [`Top raked, high at the ${top.high} side: ${rise}`]
  return [`Top ${top.shape}: ${rise}, radius ${figures.write(line.radius ?? 0)}`]
}

/** Lines under an elevation for what has no room in it: the top's radius, and the gap between the halves of a stable door. */
export const viewNotes = (spec: GateSpec, placing: Placing, figures: FigureText): string[] => [
  ...topNotes(spec, placing, figures),
  ...(spec.stable ? [`Gap between the halves ${figures.write(spec.stable.gap)}`] : []),
]
