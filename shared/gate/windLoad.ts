import { signedArea } from '../geometry/polygon.ts'
import { headLine } from './frame.ts'
import type { Check } from './checks.ts'
import { geometry, type Figures } from './figures.ts'
import { windPush, windPushFigure } from './forces.ts'
import type { LeafPlan } from './leafPlan.ts'
import type { GateSpec } from './spec.ts'
import { figure, type Worked } from './worked.ts'

/** Area of a leaf in mm² within its foot, its edges and its top. */
export const leafArea = (plan: LeafPlan): number =>
  Math.abs(
    signedArea([[0, plan.foot(0)], [plan.width, plan.foot(plan.width)], ...headLine(plan, 0, plan.width)]),
  )

const latchNote = (spec: GateSpec, push: number): Check[] => [
  {
    id: 'wind-push',
    level: 'note',
    message: `A gust of ${spec.site?.gustMs ?? 0} m/s pushes ${Math.round(push)} N on the shut leaf.`,
    figures: ['leaf.wind'],
    remedy: 'See that latch, stop, hinges and posts hold it; fix a hook-back so that it never slams.',
    field: 'site.gustMs',
  },
]

/** The leaf's area, and the push of a gust on it when it is shut, N; null where no gust is given. */
export function windLoad(spec: GateSpec, plan: LeafPlan): Worked<number | null> {
  const area = leafArea(plan)
  const figures: Figures = {
    'leaf.area': figure(area / 1e6, 'm²', {
      formula: 'area within foot, edges and top',
      inputs: { width: plan.width, height: plan.height },
      source: geometry,
    }),
  }
  const speed = spec.site?.gustMs
  if (speed === undefined) return { value: null, figures, checks: [] }
  const push = windPush(speed, area)
  return {
    value: push,
    figures: { ...figures, 'leaf.wind': windPushFigure(speed, area) },
    checks: push > 0 ? latchNote(spec, push) : [],
  }
}
