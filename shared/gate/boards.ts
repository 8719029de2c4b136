import { boardingOf, boardWidths, widestEdges, type Boarding } from './boarding.ts'
import type { Check } from './checks.ts'
import { geometry, workshopSetting, type Figures } from './figures.ts'
import type { Board, LostEdge } from './leaf.ts'
import { lengthTolerance } from '../geometry/point.ts'
import { writeShortMm } from '../units/writeLength.ts'
import { rippedBoardChecks } from './rippedBoards.ts'
import type { GateSpec } from './spec.ts'
import { figure, type Worked } from './worked.ts'

/** What a board loses at each edge of the leaf: nothing between neighbours. */
function lostAt(
  index: number,
  count: number,
  ripped: boolean,
  { tongue, groove, tongues }: Boarding,
): LostEdge {
  const atHanging = tongues === 'to-closing' ? 'groove' : 'tongue'
  const atClosing = tongues === 'to-closing' ? 'tongue' : 'groove'
  const there = { groove: groove > 0, tongue: tongue > 0 }
  const lost = (edge: 'groove' | 'tongue') => (ripped ? 'rip' : there[edge] ? edge : 'nothing')
  return {
    hanging: index === 0 ? lost(atHanging) : 'nothing',
    closing: index === count - 1 ? lost(atClosing) : 'nothing',
  }
}

/** What the saw or plane takes off a full board at each edge, mm. A lone board loses its groove, and the rest at its other edge. */
function stripOff(
  width: number,
  at: { first: boolean; last: boolean },
  { cover, tongue, groove, tongues }: Boarding,
) {
  const grooveFirst = tongues === 'to-closing'
  const lone = at.first && at.last
  const grooveEdge = grooveFirst ? at.first : at.last
  const tongueEdge = grooveFirst ? at.last : at.first
  const groovePart = lone ? groove : grooveEdge ? cover - width : 0
  const tonguePart = lone ? tongue + cover - groove - width : tongueEdge ? tongue + cover - width : 0
  return grooveFirst
    ? { hanging: groovePart, closing: tonguePart }
    : { hanging: tonguePart, closing: groovePart }
}

/** The boards' own list from their widths, hanging → closing. */
function boardsFrom(widths: number[], leafHeight: number, boarding: Boarding, endTrim: number): Board[] {
  const widest = widestEdges(boarding)
  const count = widths.length
  let x = 0
  return widths.map((width, index) => {
    const [first, last] = [index === 0, index === count - 1]
    const full =
      first && last ? boarding.cover : first ? widest.hanging : last ? widest.closing : boarding.cover
    const ripped = width < full - lengthTolerance
    const strip = stripOff(width, { first, last }, boarding)
    const keepsTongue = boarding.tongues === 'to-closing' ? !last : !first
    const cut = strip.hanging > lengthTolerance || strip.closing > lengthTolerance
    const board: Board = {
      x,
      width,
      length: leafHeight,
      blank: leafHeight + 2 * endTrim,
      fence: cut ? width + (keepsTongue ? boarding.tongue : 0) : null,
      ripped,
      loses: lostAt(index, count, ripped, boarding),
      strip,
    }
    x += width + boarding.gap
    return board
  })
}

function boardFigures(boards: Board[], leafWidth: number, boarding: Boarding, endTrim: number): Figures {
  const { cover, gap, tongue, groove } = boarding
  const count = boards.length
  const figures: Figures = {
    'boards.count': figure(count, 'no.', {
      formula: 'the least count whose ripped board is no wider than the edge allows',
      inputs: { 'leaf width': leafWidth, cover, gap, groove },
      source: geometry,
    }),
  }
  boards.forEach((board, index) => {
    const id = `board.${index + 1}`
    const others = leafWidth - board.width - (count - 1) * gap
    figures[`${id}.width`] = figure(board.width, 'mm', {
      formula: 'leaf width − widths of the other boards − (count − 1) × gap',
      inputs: { 'leaf width': leafWidth, 'widths of the other boards': others, count, gap },
      source: geometry,
    })
    figures[`${id}.x`] = figure(board.x, 'mm', {
      formula: 'widths of the boards before it + number before it × gap',
      inputs: { 'widths of the boards before it': board.x - index * gap, 'number before it': index, gap },
      source: geometry,
    })
    figures[`${id}.length`] = figure(board.length, 'mm', {
      formula: 'leaf height, the top being level',
      inputs: { 'leaf height': board.length },
      source: geometry,
    })
    figures[`${id}.blank`] = figure(board.blank, 'mm', {
      formula: 'finished length + 2 × end trim',
      inputs: { 'finished length': board.length, 'end trim': endTrim },
      source: workshopSetting,
    })
    if (board.fence !== null)
      figures[`${id}.fence`] = figure(board.fence, 'mm', {
        formula: 'face width + kept tongue',
        inputs: { 'face width': board.width, 'kept tongue': board.fence - board.width, tongue },
        source: geometry,
      })
  })
  return figures
}

/** The tongue must reach into its groove and the joint must be able to close to its gap. */
function jointChecks({ tongue, groove, gap }: Boarding): Check[] {
  const checks: Check[] = []
  const field = 'boards.gap'
  const figures = ['boards.tongueReach']
  if (tongue > 0 && tongue - gap < 3)
    checks.push({
      id: 'tongue-reach',
      level: 'caution',
      field,
      figures,
      message: `The tongue of ${tongue} mm reaches only ${writeShortMm(tongue - gap)} mm into its groove at a gap of ${gap} mm.`,
      remedy: `Close the gap to ${writeShortMm(Math.max(0, tongue - 3))} mm or less, or use a board with a longer tongue.`,
    })
  if (tongue > groove + gap)
    checks.push({
      id: 'tongue-bottoms',
      level: 'caution',
      field: 'boards.section.groove',
      figures,
      message: `The tongue of ${tongue} mm is longer than its groove of ${groove} mm and the gap of ${gap} mm together: the joint can't close.`,
      remedy: `Deepen the groove to ${writeShortMm(tongue - gap + 1)} mm or shorten the tongue.`,
    })
  return checks
}

/** The boarding of one leaf: widths, fences, lengths and blanks, with what was found. Leaf sizes in mm. */
export function layBoards(
  spec: GateSpec,
  leaf: { width: number; height: number },
  gap: number,
): Worked<Board[]> {
  const boarding = boardingOf(spec.boards, gap)
  const widths = boardWidths(leaf.width, boarding, spec.boards.rip)
  const boards = boardsFrom(widths, leaf.height, boarding, spec.boards.endTrim)
  const figures = boardFigures(boards, leaf.width, boarding, spec.boards.endTrim)
  if (boarding.tongue > 0)
    figures['boards.tongueReach'] = figure(boarding.tongue - gap, 'mm', {
      formula: 'tongue − gap',
      inputs: { tongue: boarding.tongue, gap },
      source: geometry,
    })
  const checks = [
    ...rippedBoardChecks(boards, leaf.width, boarding, spec.boards.rip),
    ...jointChecks(boarding),
  ]
  return {
    value: boards,
    figures,
    checks: checks.map((check) => ({ ...check, figures: check.figures.filter((id) => id in figures) })),
  }
}
