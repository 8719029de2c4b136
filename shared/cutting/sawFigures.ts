import { geometry, workshopSetting, type Figure, type Figures } from '../gate/figures.ts'
import type { Saw } from '../gate/spec.ts'
import { figure } from '../gate/worked.ts'
import type { Cut } from './sawCuts.ts'
import type { SawSetting } from './sawSetting.ts'

/** A saw set for a cut, with what its figures are worked from and the start of their ids. */
export type SetSaw = { saw: Saw; setting: SawSetting; cut: Cut; id: string }

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

/** Every figure of one saw's setting, under the setting's own id. */
export function settingFigures(set: SetSaw): Figures {
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
      formula: 'the board’s own fence: face width + kept tongue',
      inputs: { 'the board’s own fence': setting.fence },
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
