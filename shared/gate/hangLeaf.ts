import { braceLoads } from './braceLoads.ts'
import type { Check } from './checks.ts'
import { hingeLoads } from './hingeLoads.ts'
import type { HangingLeaf } from './leaf.ts'
import { weighLeaf, type Weighed } from './leafWeight.ts'
import { windLoad } from './windLoad.ts'
import { gather, type Worked } from './worked.ts'

/** A leaf over any of these is large enough to ask an engineer about: m², mm, kg. Common practice. */
const large = { area: 2.5, width: 1500, massKg: 60 }

function largeNote({ plan }: Weighed, { massKg, area }: { massKg: number; area: number }): Check[] {
  if (area <= large.area && plan.width <= large.width && massKg <= large.massKg) return []
  return [
    {
      id: 'ask-engineer',
      level: 'note',
      message: `The leaf is large: ${Math.round(massKg)} kg and ${area.toFixed(1)} m². The forces shown are aids to judgement.`,
      figures: ['leaf.mass', 'leaf.area'],
      remedy: 'Ask an engineer about posts and hinges, and about any public or powered gate.',
      field: 'size',
    },
  ]
}

/**
 * A leaf as it hangs: weighed, with what its hinges, its braces and (in the wind) its latch have to hold. counts: how many of each entry of
 * the ironmongery are placed on all leaves.
 */
export function hangLeaf(weighed: Weighed, counts: Map<number, number>): Worked<HangingLeaf> {
  const { spec, plan, leaf, placed } = weighed
  const mass = weighLeaf(weighed, counts)
  const hinges = hingeLoads(leaf, mass.value, { placed, pinInset: spec.site?.pinInset ?? 0 })
  const loads = braceLoads(spec, leaf, mass.value)
  const wind = windLoad(spec, plan)
  const { figures, checks } = gather([mass, hinges, loads, wind])
  const { massKg, centre } = mass.value
  const area = figures['leaf.area']?.value ?? 0
  return {
    value: { ...leaf, massKg, centre, hinges: hinges.value, loads: loads.value, windN: wind.value },
    figures,
    checks: [...checks, ...largeNote(weighed, { massKg, area })],
  }
}
