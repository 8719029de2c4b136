import { workshopSetting, geometry, type Figure, type Figures } from '../gate/figures.ts'
import type { Board, Leaf } from '../gate/leaf.ts'
import type { GateSpec, Saw } from '../gate/spec.ts'
import { figure } from '../gate/worked.ts'
import { workshopOf } from '../gate/standardSpec.ts'
import { toRadians } from '../units/angle.ts'

/**
 * How one saw is set for one cut. angle off square (0 square) and which way it leans ('flat' across the face, 'bevel'
 * through the thickness); depth of blade = thickness cut through + one tooth; guideLines are for a guided saw, one for each side of
 * its base: the line to lay the guide on, in mm from the end or edge that is cut away (cutAt is the cut's own place from there;
 * 0 for an angled cut, where the guide line lies square off the marked cut). fence in mm for a rip against a fence, else null.
 */
export type SawSetting = {
  saw: string
  cut: string
  part: string
  angle: number
  lean: 'flat' | 'bevel'
  depth: number
  cutAt: number | null
  fence: number | null
  guideLines: { side: 'left' | 'right'; at: number }[]
}

/** A cut that has to be made, whatever the saw, through a part of this thickness in mm. */
type Cut = {
  cut: string
  part: string
  angle: number
  lean: 'flat' | 'bevel'
  thickness: number
  cutAt: number | null
  fence: number | null
  kind: 'across' | 'rip'
}

function boardCuts(spec: GateSpec, boards: Board[]): Cut[] {
  const { thickness } = spec.boards.section
  const trim = spec.boards.endTrim
  const across: Cut[] =
    trim > 0
      ? [
          {
            cut: 'square each board end',
            part: 'boards',
            angle: 0,
            lean: 'flat',
            thickness,
            cutAt: trim,
            fence: null,
            kind: 'across',
          },
        ]
      : []
  const rips = boards.flatMap((board, index) =>
    (['hanging', 'closing'] as const)
      .filter((edge) => board.strip[edge] > 0)
      .map((edge): Cut => ({
        cut:
          board.loses[edge] === 'tongue'
            ? `take off the tongue, ${edge} edge`
            : board.loses[edge] === 'groove'
              ? `take off the groove, ${edge} edge`
              : `rip, ${edge} edge`,
        part: `board ${index + 1}`,
        angle: 0,
        lean: 'flat',
        thickness,
        cutAt: board.strip[edge],
        fence: board.fence,
        kind: 'rip',
      })),
  )
  return [...across, ...rips]
}

function ledgeCuts(spec: GateSpec, leaf: Leaf): Cut[] {
  const { end } = spec.ledges
  const angle = end.cut === 'square' ? 0 : end.angle
  const thicknesses = [...new Set(leaf.ledges.map((ledge) => ledge.section.thickness))]
  return thicknesses.map((thickness) => ({
    cut: end.cut === 'square' ? 'ledge ends, square' : `ledge ends, ${end.cut}`,
    part: 'ledges',
    angle,
    lean: end.cut === 'bevelled' ? 'bevel' : 'flat',
    thickness,
    cutAt: end.cut === 'bevelled' ? null : 0,
    fence: null,
    kind: 'across',
  }))
}

function braceCuts(leaf: Leaf): Cut[] {
  const bySetting = new Map(leaf.braces.map((brace) => [brace.sawSetting.toFixed(6), brace]))
  return [...bySetting.values()].map((brace) => ({
    cut: 'both brace ends',
    part: bySetting.size === 1 ? 'braces' : `${brace.name} brace`,
    angle: brace.sawSetting,
    lean: 'flat',
    thickness: brace.section.thickness,
    cutAt: 0,
    fence: null,
    kind: 'across',
  }))
}

const guided = (saw: Saw): boolean => saw.guideLeft !== undefined || saw.guideRight !== undefined

/**
 * Where to lay the guide for a cut, mm from the end or edge that is cut away: cut position + the saw's distance from
 * base edge to tooth on that side. With 40 mm from base edge to tooth, a 10 mm trim is marked 50 mm from the end.
 */
export const guideLine = (cutAt: number, offset: number): number => cutAt + offset

/** How far the blade goes through: along a bevel the way is longer than the part is thick. */
const reachOf = ({ thickness, lean, angle }: Cut): number =>
  lean === 'bevel' ? thickness / Math.cos(toRadians(angle)) : thickness

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
    depth: reachOf(cut) + saw.tooth,
    cutAt,
    fence: guided(saw) && cut.kind === 'rip' ? null : cut.fence,
    guideLines,
  }
}

/** A saw set for a cut, with what its figures are worked from and the start of their ids. */
type SetSaw = { saw: Saw; setting: SawSetting; cut: Cut; id: string }

function angleFigure({ setting, cut }: SetSaw): Figure {
  const { angle } = setting
  if (cut.part.includes('brace'))
    return figure(angle, '°', {
      formula: '90° − brace angle',
      inputs: { 'brace angle': 90 - angle },
      source: geometry,
    })
  return angle === 0
    ? figure(angle, '°', { formula: 'square', inputs: { square: 0 }, source: geometry })
    : figure(angle, '°', { formula: 'as entered', inputs: { entered: angle }, source: workshopSetting })
}

function depthFigure({ saw, setting, cut }: SetSaw): Figure {
  const inputs = { thickness: cut.thickness, tooth: saw.tooth }
  return figure(setting.depth, 'mm', {
    ...(cut.lean === 'bevel'
      ? { formula: 'thickness / cos(angle) + one tooth', inputs: { ...inputs, angle: cut.angle } }
      : { formula: 'thickness + one tooth', inputs }),
    source: workshopSetting,
  })
}

function settingFigures(set: SetSaw): Figures {
  const { saw, setting, cut, id } = set
  const figures: Figures = { [`${id}.depth`]: depthFigure(set), [`${id}.angle`]: angleFigure(set) }
  if (setting.cutAt !== null)
    figures[`${id}.cutAt`] = figure(setting.cutAt, 'mm', {
      formula: 'what the cut takes off, from the end or edge that is cut away',
      inputs: { 'taken off': setting.cutAt },
      source: cut.kind === 'rip' ? geometry : workshopSetting,
    })
  if (setting.fence !== null)
    figures[`${id}.fence`] = figure(setting.fence, 'mm', {
      formula: "the board's own fence: face width + kept tongue",
      inputs: { "the board's own fence": setting.fence },
      source: geometry,
    })
  for (const { side, at } of setting.guideLines)
    figures[`${id}.guide.${side}`] = figure(at, 'mm', {
      formula: 'cut position + distance from base edge to tooth',
      inputs: {
        'cut position': setting.cutAt ?? 0,
        'distance from base edge to tooth': (side === 'left' ? saw.guideLeft : saw.guideRight) ?? 0,
      },
      source: workshopSetting,
    })
  return figures
}

/** Every saw of the workshop set for every cut of a gate, with the figures behind it ('saw.1.depth' is of the first row). */
export function sawSettings(spec: GateSpec, leaf: Leaf): { settings: SawSetting[]; figures: Figures } {
  const cuts = [...boardCuts(spec, leaf.boards), ...ledgeCuts(spec, leaf), ...braceCuts(leaf)]
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
