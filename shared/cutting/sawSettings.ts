import type { Figures } from '../gate/figures.ts'
import type { Leaf } from '../gate/leaf.ts'
import type { GateSpec, Saw } from '../gate/spec.ts'
import { workshopOf } from '../gate/standardSpec.ts'
import { toRadians } from '../units/angle.ts'
import { cutsToMake, type Cut } from './sawCuts.ts'
import { settingFigures } from './sawFigures.ts'
import type { SawSetting } from './sawSetting.ts'

const guided = (saw: Saw): boolean => saw.guideLeft !== undefined || saw.guideRight !== undefined

/**
 * Where to lay the guide for a cut, mm from the end or edge that is cut away: cut position + the saw's distance from
 * base edge to tooth on that side. With 40 mm from base edge to tooth, a 10 mm trim is marked 50 mm from the end.
 */
export const guideLine = (cutAt: number, offset: number): number => cutAt + offset

/** How far the blade goes through: along a bevel the way is longer than the part is thick. */
const reachOf = ({ thickness, lean, angle }: Pick<Cut, 'thickness' | 'lean' | 'angle'>): number =>
  lean === 'bevel' ? thickness / Math.cos(toRadians(angle)) : thickness

/** How deep a saw is set for a cut: what it goes through and one tooth, mm. */
export const bladeDepth = (
  cut: Pick<Cut, 'thickness' | 'lean' | 'angle'>,
  { tooth }: Pick<Saw, 'tooth'>,
): number => reachOf(cut) + tooth

function settingOf(saw: Saw, cut: Cut): SawSetting {
  const sides = [
    ['left', saw.guideLeft],
    ['right', saw.guideRight],
  ] as const
  const guideLines = sides.flatMap(([side, offset]) =>
    cut.cutAt === null || offset === undefined ? [] : [{ side, at: guideLine(cut.cutAt, offset) }],
  )
  const { cut: name, part, angle, lean, cutAt } = cut
  return {
    saw: saw.name,
    cut: name,
    part,
    angle,
    lean,
    depth: bladeDepth(cut, saw),
    cutAt,
    fence: guided(saw) && cut.kind === 'rip' ? null : cut.fence,
    guideLines,
  }
}

/** Every saw of the workshop set for every cut of a gate, with the figures behind it ('saw.1.depth' is of the first row). */
export function sawSettings(spec: GateSpec, leaves: Leaf[]): { settings: SawSetting[]; figures: Figures } {
  const cuts = cutsToMake(spec, leaves)
  const figures: Figures = {}
  const settings: SawSetting[] = []
  for (const saw of workshopOf(spec).saws)
    for (const cut of cuts) {
      const setting = settingOf(saw, cut)
      settings.push(setting)
      Object.assign(figures, settingFigures({ saw, setting, cut, id: `saw.${settings.length}` }))
    }
  return { settings, figures }
}
