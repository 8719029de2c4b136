import { cutFigures } from '../cutting/cutFigures.ts'
import { cutList } from '../cutting/cutList.ts'
import { sawSettings } from '../cutting/sawSettings.ts'
import { layBoards } from './boards.ts'
import { layBraces } from './braces.ts'
import { isStop, type Check } from './checks.ts'
import { engine, type Design, type DesignOutcome } from './designModel.ts'
import { placeFixings } from './fixings.ts'
import { sizeHoles } from './holeSizes.ts'
import type { Leaf } from './leaf.ts'
import { leafSize } from './leafSize.ts'
import { layLedges } from './ledges.ts'
import type { GateSpec } from './spec.ts'
import { writeSteps } from './steps.ts'
import { gather } from './worked.ts'

const stopped = (checks: Check[]): DesignOutcome => ({ made: false, stopped: { engine, leaves: [], checks } })

/** The gap between boards, mm, as entered. */
function jointGap(spec: GateSpec): number {
  if (spec.boards.gap === 'auto') throw new RangeError("jointGap takes a gap in mm; 'auto' is refused before")
  return spec.boards.gap
}

/**
 * Works out a gate from a spec that `parseSpec` has let through: every part, hole, cut, check, figure and step; or, when it
 * can't be made as entered, the checks alone. The hand changes nothing here: it mirrors the drawing only.
 */
export function design(spec: GateSpec): DesignOutcome {
  const { size, figures: sizeFigures } = leafSize(spec)
  const boards = layBoards(spec, size, jointGap(spec))
  const ledges = layLedges(spec, size)
  const early = [...boards.checks, ...ledges.checks]
  const braces = layBraces(spec, ledges.value)
  // Fixings on a part that can't be made would be nonsense, so the list of what's wrong ends here.
  if (early.some(isStop)) return stopped([...early, ...braces.checks])
  const fixings = placeFixings(spec, { boards: boards.value, ledges: ledges.value, braces: braces.value })
  const holes = sizeHoles(spec, fixings.value)
  const { figures, checks } = gather([boards, ledges, braces, fixings, holes])
  if (checks.some(isStop)) return stopped(checks)
  const leaf: Leaf = {
    ...size,
    boards: boards.value,
    ledges: ledges.value,
    braces: braces.value,
    frame: [],
    fixings: fixings.value,
  }
  const cuts = cutList(spec, [leaf])
  const saws = sawSettings(spec, leaf)
  const made: Design = {
    engine,
    leaves: [leaf],
    cuts,
    holes: holes.value,
    sawSettings: saws.settings,
    checks,
    figures: { ...sizeFigures, ...figures, ...saws.figures, ...cutFigures(cuts, leaf) },
    steps: writeSteps({ spec, leaf, cuts, holes: holes.value }),
  }
  return { made: true, design: made }
}
