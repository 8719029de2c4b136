import { boardFigures } from './boardFigures.ts'
import { boardingOf, boardWidths, widestEdges, type Boarding } from './boarding.ts'
import type { Check } from './checks.ts'
import type { Board, LostEdge } from './leaf.ts'
import { lengthTolerance } from '../geometry/point.ts'
import { writeShortMm } from '../units/writeLength.ts'
import { rippedBoardChecks } from './rippedBoards.ts'
import type { BoardsFill } from './leafRoom.ts'
import type { GateSpec } from './spec.ts'
import type { Worked } from './worked.ts'

type Place = { first: boolean; last: boolean }

/** Longest a board is over a stretch of the leaf: from the foot's lowest point there to the top's highest. */
const lengthOver = ({ top, foot }: BoardsFill, [from, to]: [number, number]): number =>
  top.highest(from, to) - Math.min(foot(from), foot(to))

/** A strip's width, mm, or none at all where only rounding is left of it. */
const stripWidth = (mm: number): number => (mm > lengthTolerance ? mm : 0)

/** What the saw or plane takes off a full board at each edge, mm. A lone board loses its groove, and the rest at its other edge. */
function stripOff(width: number, { first, last }: Place, boarding: Boarding): Board['strip'] {
  const { cover, groove, tongue, tongues } = boarding
  const grooveFirst = tongues === 'to-closing'
  const lone = first && last
  const grooveEdge = grooveFirst ? first : last
  const tongueEdge = grooveFirst ? last : first
  const groovePart = stripWidth(lone ? groove : grooveEdge ? cover - width : 0)
  const tonguePart = stripWidth(
    lone ? tongue + cover - groove - width : tongueEdge ? tongue + cover - width : 0,
  )
  return grooveFirst
    ? { hanging: groovePart, closing: tonguePart }
    : { hanging: tonguePart, closing: groovePart }
}

/** What is lost with a strip: the groove or the tongue alone, or a rip where the face gets narrower too. */
function lostWith(strip: Board['strip'], { groove, tongue, tongues }: Boarding): LostEdge {
  const lost = (edge: 'groove' | 'tongue', width: number, alone: number) =>
    width === 0 ? 'nothing' : width > alone + lengthTolerance ? 'rip' : edge
  const grooveFirst = tongues === 'to-closing'
  return {
    hanging: grooveFirst ? lost('groove', strip.hanging, groove) : lost('tongue', strip.hanging, tongue),
    closing: grooveFirst ? lost('tongue', strip.closing, tongue) : lost('groove', strip.closing, groove),
  }
}

/** Widest that the board at the closing edge can be made, its tongue planed off and its groove, where that would show, cut away. */
const widestBoard = ({ first, last }: Place, boarding: Boarding): number =>
  first && last ? boarding.cover - boarding.groove : widestEdges(boarding).closing

/** The strips of a closing board that is left wider by its lap: so much less comes off the edge that is ripped. */
function stripWithLap(
  { strip, lap }: { strip: Board['strip']; lap: number },
  { first, last }: Place,
  { tongues }: Boarding,
): Board['strip'] {
  const edge = first && last && tongues === 'to-hanging' ? 'hanging' : 'closing'
  return { ...strip, [edge]: stripWidth(strip[edge] - lap) }
}

/** The boards' own list from their widths, hanging → closing. Each runs from the foot's line to the top's over its width. */
function boardsFrom(
  widths: number[],
  fill: BoardsFill,
  { endTrim, boarding, lap }: { endTrim: number; boarding: Boarding; lap: number },
): Board[] {
  let x = fill.from
  return widths.map((width, index) => {
    const [first, last] = [index === 0, index === widths.length - 1]
    const strip = stripOff(width, { first, last }, boarding)
    const loses = lostWith(strip, boarding)
    const lapped = last && lap > 0 && width + lap <= widestBoard({ first, last }, boarding) + lengthTolerance
    const kept = lapped ? stripWithLap({ strip, lap }, { first, last }, boarding) : strip
    const keepsTongue = boarding.tongues === 'to-closing' ? !last : !first
    const tongue = keepsTongue ? boarding.tongue : 0
    const face: [number, number] = [x, x + width]
    const whole: [number, number] =
      boarding.tongues === 'to-closing' ? [x, x + width + tongue] : [x - tongue, x + width]
    const board: Board = {
      x,
      width,
      length: lengthOver(fill, face),
      blank: lengthOver(fill, whole) + 2 * endTrim,
      fence: kept.hanging + kept.closing > 0 ? width + tongue + (lapped ? lap : 0) : null,
      ripped: loses.hanging === 'rip' || loses.closing === 'rip',
      loses: lapped ? lostWith(kept, boarding) : loses,
      strip: kept,
      heads: [fill.top.heightAt(face[0]), fill.top.heightAt(face[1])],
      feet: [fill.foot(face[0]), fill.foot(face[1])],
      ...(lapped ? { lap } : {}),
    }
    x += width + boarding.gap
    return board
  })
}

/** The tongue must reach into its groove and the joint must be able to close to its gap. */
function jointChecks({ tongue, groove, gap }: Boarding): Check[] {
  const checks: Check[] = []
  const field = 'boards.gap'
  const figures = ['boards.tongueReach']
  if (tongue > 0 && tongue - gap < 3 - lengthTolerance)
    checks.push({
      id: 'tongue-reach',
      level: 'caution',
      field,
      figures,
      message: `The tongue of ${writeShortMm(tongue)} mm ${tongue > gap ? `reaches only ${writeShortMm(tongue - gap)} mm into` : 'doesn’t reach'} its groove at a gap of ${writeShortMm(gap)} mm.`,
      remedy:
        tongue > 3
          ? `Close the gap to ${writeShortMm(tongue - 3)} mm or less, or use a board with a longer tongue.`
          : 'Use a board with a longer tongue.',
    })
  if (tongue > groove + gap + lengthTolerance)
    checks.push({
      id: 'tongue-bottoms',
      level: 'caution',
      field: 'boards.section.groove',
      figures,
      message: `The tongue of ${writeShortMm(tongue)} mm is longer than its groove of ${writeShortMm(groove)} mm and the gap of ${writeShortMm(gap)} mm together: the joint can’t close.`,
      remedy: `Deepen the groove to ${writeShortMm(tongue - gap + 1)} mm or shorten the tongue.`,
    })
  return checks
}

/** A closing board whose lap the section can't give. */
function lapChecks(boards: Board[], boarding: Boarding, lap: number): Check[] {
  const last = boards.at(-1)
  if (lap === 0 || !last || last.lap !== undefined) return []
  const widest = widestBoard({ first: boards.length === 1, last: true }, boarding)
  const room = widest - last.width
  const lessen = room > lengthTolerance ? `lessen the lap to ${writeShortMm(room)} mm, ` : ''
  return [
    {
      id: 'lap-over-board',
      level: 'caution',
      message: `Board ${boards.length} of the first leaf has to be ${writeShortMm(last.width + lap)} mm wide with its lap; the section gives ${writeShortMm(widest)} mm there.`,
      figures: ['meeting.lap', `board.${boards.length}.width`],
      remedy: `Rip at another edge, ${lessen}meet under a strip, or glue a lip of the boards’ own timber to that edge.`,
      field: 'meeting.lap',
    },
  ]
}

/** The boarding of one leaf: widths, fences, lengths and blanks, with what was found; gap between them, and lap that the closing board is left wider by for a rebated meeting, mm. */
export function layBoards(
  spec: GateSpec,
  fill: BoardsFill,
  { gap, lap }: { gap: number; lap: number },
): Worked<Board[]> {
  const boarding = boardingOf(spec.boards, gap)
  const widths = boardWidths(fill.width, boarding, spec.boards.rip)
  const { endTrim } = spec.boards
  const boards = boardsFrom(widths, fill, { endTrim, boarding, lap })
  const figures = boardFigures({ boards, leafWidth: fill.width, endTrim, boarding })
  const checks = [
    ...rippedBoardChecks({ boards, leafWidth: fill.width }, boarding, spec.boards.rip),
    ...jointChecks(boarding),
    ...lapChecks(boards, boarding, lap),
  ]
  return {
    value: boards,
    figures,
    checks: checks.map((check) => ({
      ...check,
      figures: check.figures.filter((id) => id in figures || id.startsWith('meeting.')),
    })),
  }
}
