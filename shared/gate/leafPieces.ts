import type { Point } from '../geometry/point.ts'
import { headLine } from './frame.ts'
import type { Board, Brace, FramePart, Leaf, Ledge } from './leaf.ts'
import type { LeafPlan } from './leafPlan.ts'
import { lowerEdge, shortReach, upperEdge } from './ledges.ts'
import type { FlatPart } from './massOf.ts'
import { lapHead, lapPast } from './meeting.ts'
import type { GateSpec, Section } from './spec.ts'
import { weatheredAway } from './weathering.ts'

/** The kinds of part that a leaf's weight is added up from. */
export type PieceKind = 'boards' | 'ledges' | 'braces' | 'frame'

/**
 * A flat piece of a leaf: its outline on it and the section it is of. thickness in mm, under 0 for timber cut away to let another
 * part in (a rebate, a notch), so that what fills the place isn't counted twice.
 */
export type Piece = Pick<FlatPart, 'outline' | 'thickness'> & { kind: PieceKind; section: Section }

const box = ([left, right]: [number, number], [low, high]: [number, number]): Point[] => [
  [left, low],
  [right, low],
  [right, high],
  [left, high],
]

/** A board as it is seen, foot and head by the lines it is cut to. Tongues fill the grooves they stand in, so they add nothing. */
function boardOutline(plan: LeafPlan, board: Board, framed: boolean): Point[] {
  const [from, to] = [board.x, board.x + board.width]
  const head: Point[] = framed
    ? [
        [to, board.heads[1]],
        [from, board.heads[0]],
      ]
    : headLine(plan, from, to)
  return [[from, board.feet[0]], [to, board.feet[1]], ...head]
}

/** A ledge: a splayed one is a trapezoid with its lower edge long; one bevelled through its thickness is as heavy as its middle is long. */
function ledgeOutline(spec: GateSpec, ledge: Ledge): Point[] {
  const [low, high] = [lowerEdge(ledge), upperEdge(ledge)]
  const [left, right] = shortReach(ledge)
  if (spec.frame) return box([left, right], [low, high])
  const [longLeft, longRight] = [ledge.x, ledge.x + ledge.length]
  if (spec.ledges.end.cut === 'splayed')
    return [
      [longLeft, low],
      [longRight, low],
      [right, high],
      [left, high],
    ]
  return box([(longLeft + left) / 2, (longRight + right) / 2], [low, high])
}

/** What notches take out of the ledges (or the rail), so that the brace in them isn't counted twice. */
function notchPieces(spec: GateSpec, { braces, ledges, frame }: Leaf): Piece[] {
  const rail = frame.find(({ name }) => name === 'top rail')
  const beams: { section: Section; kind: PieceKind }[] = [
    ...ledges.map(({ section }) => ({ section, kind: 'ledges' as const })),
    ...(spec.frame && rail ? [{ section: rail.section, kind: 'frame' as const }] : []),
  ]
  return braces.flatMap((brace, index): Piece[] => {
    if (brace.notch === null) return []
    const [footA, footPoint, footB, headA, headPoint, headB] = brace.outline as [
      Point,
      Point,
      Point,
      Point,
      Point,
      Point,
    ]
    return [
      { outline: [footA, footPoint, footB], beam: beams[index] },
      { outline: [headA, headPoint, headB], beam: beams[index + 1] },
    ].flatMap(({ outline, beam }) =>
      beam
        ? [
            {
              outline,
              thickness: -Math.min(brace.section.thickness, beam.section.thickness),
              kind: beam.kind,
              section: beam.section,
            },
          ]
        : [],
    )
  })
}

/** What the rebates take out of stiles and rail where the boarding lies in them. */
function rebatePieces(spec: GateSpec, { boards, frame }: Leaf): Piece[] {
  const rebate = spec.frame?.rebate ?? 0
  if (!spec.frame || rebate === 0) return []
  const thickness = -spec.boards.section.thickness
  const overlap = ([from, to]: [number, number], [left, right]: [number, number]): [number, number] => [
    Math.max(from, left),
    Math.min(to, right),
  ]
  return frame.flatMap((part) => {
    const xs = part.outline.map(([x]) => x)
    const [left, right] = [Math.min(...xs), Math.max(...xs)]
    return boards.flatMap((board): Piece[] => {
      const [from, to] = overlap([board.x, board.x + board.width], [left, right])
      if (to <= from) return []
      const head = board.heads[0]
      const footAt = (x: number) =>
        board.feet[0] + ((board.feet[1] - board.feet[0]) * (x - board.x)) / board.width
      const outline: Point[] =
        part.name === 'top rail'
          ? box([from, to], [head - rebate, head])
          : [
              [from, footAt(from)],
              [to, footAt(to)],
              [to, head],
              [from, head],
            ]
      return [{ outline, thickness, kind: 'frame', section: part.section }]
    })
  })
}

/** The half-thick lap of a rebated meeting: added past the first leaf's width, cut back within the second's. */
function lapPieces(spec: GateSpec, plan: LeafPlan): Piece[] {
  const past = lapPast(spec, plan.name)
  if (past === 0) return []
  const section = spec.frame?.stile ?? spec.boards.section
  const [from, to] = past > 0 ? [plan.width, plan.width + past] : [plan.width + past, plan.width]
  const outline: Point[] = [
    [from, plan.foot(from)],
    [to, plan.foot(to)],
    [to, lapHead(plan, to)],
    [from, lapHead(plan, from)],
  ]
  const thickness = (Math.sign(past) * section.thickness) / 2
  return [{ outline, thickness, kind: spec.frame ? 'frame' : 'boards', section }]
}

const weatherPieces = (spec: GateSpec, leaf: Leaf): Piece[] =>
  weatheredAway(spec, leaf).map(({ ledge, outline, thickness }) => ({
    outline,
    thickness,
    kind: 'ledges',
    section: ledge.section,
  }))

const whole = (kind: PieceKind, part: Brace | FramePart): Piece => ({
  outline: part.outline,
  thickness: part.section.thickness,
  kind,
  section: part.section,
})

/**
 * Every piece of timber of a leaf as it hangs: horns sawn off, tenons inside their stiles, boards in their rebates, braces in their
 * notches, weathered edges planed off. A curved top is followed in steps of 10 mm at most.
 */
export function leafPieces(spec: GateSpec, plan: LeafPlan, parts: Leaf): Piece[] {
  const { section } = spec.boards
  const framed = spec.frame !== undefined
  return [
    ...parts.boards.map((board): Piece => ({
      outline: boardOutline(plan, board, framed),
      thickness: section.thickness,
      kind: 'boards',
      section,
    })),
    ...parts.ledges.map((ledge): Piece => ({
      outline: ledgeOutline(spec, ledge),
      thickness: ledge.section.thickness,
      kind: 'ledges',
      section: ledge.section,
    })),
    ...parts.braces.map((brace) => whole('braces', brace)),
    ...parts.frame.map((part) => whole('frame', part)),
    ...rebatePieces(spec, parts),
    ...notchPieces(spec, parts),
    ...lapPieces(spec, plan),
    ...weatherPieces(spec, parts),
  ]
}
