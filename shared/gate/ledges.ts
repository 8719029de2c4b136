import { toRadians } from '../units/angle.ts'
import { commonPractice, geometry, workshopSetting, type Figure, type Figures } from './figures.ts'
import { framedLedgeMargin } from './frameRoom.ts'
import type { Ledge } from './leaf.ts'
import { ledgeChecks, twoLedgesUpTo } from './ledgeChecks.ts'
import type { LedgeRoom } from './leafRoom.ts'
import type { GateSpec, LedgeEnd, Section } from './spec.ts'
import { figure, type Worked } from './worked.ts'

/** How far the outer ledges' outer edges stand from foot and top unless the person says otherwise, mm: common practice. */
export const ledgeMargin = 125

/** How many ledges and rails: as set, else by the heights given, else by the leaf's height. A framed gate's top rail counts as one. */
export function ledgeCount(spec: GateSpec, leafHeight: number): 2 | 3 {
  const { count, heights } = spec.ledges
  if (count !== 'auto') return count
  if (heights !== 'auto') return heights.length + (spec.frame ? 1 : 0) === 3 ? 3 : 2
  return leafHeight <= twoLedgesUpTo ? 2 : 3
}

const ledgeNames = (spec: GateSpec, leafHeight: number): Ledge['name'][] => {
  const framed = spec.frame !== undefined
  return ledgeCount(spec, leafHeight) === 2
    ? framed
      ? ['bottom']
      : ['bottom', 'top']
    : framed
      ? ['bottom', 'middle']
      : ['bottom', 'middle', 'top']
}

/** What one cut end takes off the long edge to leave the short one, mm. A square end takes nothing. */
export function endLoss(end: LedgeEnd, section: Section): number {
  if (end.cut === 'square') return 0
  const across = end.cut === 'bevelled' ? section.thickness : section.width
  return across * Math.tan(toRadians(end.angle))
}

/** A ledge's height and how it was found. */
type Height = { y: number; how: Figure }

const byMargin = (y: number, formula: string, inputs: Record<string, number>): Height => ({
  y,
  how: figure(y, 'mm', { formula, inputs, source: commonPractice }),
})

function bottomHeight(room: LedgeRoom, width: number): Height {
  const margin = room.frame ? framedLedgeMargin : ledgeMargin
  const foot = room.footHighest(0, room.width)
  return byMargin(foot + margin + width / 2, 'foot’s highest point + margin + ledge width / 2', {
    'foot’s highest point': foot,
    margin,
    'ledge width': width,
  })
}

function topHeight(room: LedgeRoom, width: number): Height {
  const lowest = room.topLowest(0, room.width)
  return byMargin(lowest - ledgeMargin - width / 2, 'top’s lowest point − margin − ledge width / 2', {
    'top’s lowest point': lowest,
    margin: ledgeMargin,
    'ledge width': width,
  })
}

function middleHeight(lower: number, upper: number, framed: boolean): Height {
  const above = framed ? 'top rail’s lower edge' : 'top ledge’s lower edge'
  return byMargin((lower + upper) / 2, `midway between the bottom ledge’s upper edge and the ${above}`, {
    'bottom ledge’s upper edge': lower,
    [above]: upper,
  })
}

/** Centre heights of the ledges, bottom up: as given, or the outer two in from foot and top and the middle one midway between their edges. */
function heightsOf(spec: GateSpec, room: LedgeRoom, names: Ledge['name'][]): Height[] {
  const { heights, section, topSection = section } = spec.ledges
  if (heights !== 'auto')
    return heights.map((y) => ({
      y,
      how: figure(y, 'mm', {
        formula: 'centre height as entered',
        inputs: { entered: y },
        source: workshopSetting,
      }),
    }))
  const bottom = bottomHeight(room, section.width)
  const top = topHeight(room, topSection.width)
  const limit = room.frame ? room.frame.railLower : top.y - topSection.width / 2
  const middle = middleHeight(bottom.y + section.width / 2, limit, room.frame !== null)
  return names.map((name) => ({ bottom, middle, top })[name])
}

function shortFigure(end: LedgeEnd, ledge: Ledge, room: LedgeRoom): Figure {
  if (room.frame)
    return figure(ledge.shortLength, 'mm', {
      formula: 'shoulder length: leaf width − 2 × stile width',
      inputs: { 'leaf width': room.width, 'stile width': room.frame.stileWidth },
      source: geometry,
    })
  if (end.cut === 'square')
    return figure(ledge.shortLength, 'mm', {
      formula: 'length, the ends being square',
      inputs: { length: ledge.length },
      source: geometry,
    })
  const across = end.cut === 'bevelled' ? 'thickness' : 'width'
  return figure(ledge.shortLength, 'mm', {
    formula: `length − 2 × ${across} × tan(angle)`,
    inputs: { length: ledge.length, [across]: ledge.section[across], angle: end.angle },
    source: geometry,
  })
}

function lengthFigure(spec: GateSpec, ledge: Ledge, room: LedgeRoom): Figure {
  const { hangingInset, closingInset } = spec.ledges
  return room.frame
    ? figure(ledge.length, 'mm', {
        formula: 'shoulder length + 2 × tenon',
        inputs: { 'shoulder length': room.frame.shoulder, tenon: room.frame.tenon },
        source: geometry,
      })
    : figure(ledge.length, 'mm', {
        formula: 'leaf width − hanging inset − closing inset',
        inputs: { 'leaf width': room.width, 'hanging inset': hangingInset, 'closing inset': closingInset },
        source: geometry,
      })
}

function ledgeFigures(spec: GateSpec, room: LedgeRoom, placed: { ledge: Ledge; how: Figure }[]): Figures {
  const { end, count } = spec.ledges
  const figures: Figures = {
    'ledges.count': figure(placed.length, 'no.', {
      formula: `two up to ${twoLedgesUpTo} mm of leaf height, three above, unless set${room.frame ? '; the top rail is one of them' : ''}`,
      inputs: { 'leaf height': room.height },
      source: count === 'auto' && spec.ledges.heights === 'auto' ? commonPractice : workshopSetting,
    }),
  }
  for (const { ledge, how } of placed) {
    figures[`ledge.${ledge.name}.y`] = how
    figures[`ledge.${ledge.name}.length`] = lengthFigure(spec, ledge, room)
    figures[`ledge.${ledge.name}.shortLength`] = shortFigure(end, ledge, room)
  }
  return figures
}

/**
 * The ledges of one leaf, bottom → top. The long edge runs from inset to inset (the face against the boards when bevelled, the
 * lower edge when splayed); on a framed gate length is with both tenons and shortLength between the shoulders.
 * A ledge of 145 × 28 on a 900 leaf with 10 mm insets, bevelled 15°, is 880 long and 864.995 on its back.
 */
export function layLedges(spec: GateSpec, room: LedgeRoom): Worked<Ledge[]> {
  const { section, topSection = section, hangingInset, closingInset, end } = spec.ledges
  const names = ledgeNames(spec, room.height)
  const heights = heightsOf(spec, room, names)
  const length = room.frame
    ? room.frame.shoulder + 2 * room.frame.tenon
    : room.width - hangingInset - closingInset
  const ledges = names.map((name, index): Ledge => {
    const own = name === 'top' ? topSection : section
    return {
      name,
      y: (heights[index] as Height).y,
      x: room.frame ? room.frame.stileWidth - room.frame.tenon : hangingInset,
      length,
      shortLength: room.frame ? room.frame.shoulder : length - 2 * endLoss(end, own),
      section: own,
    }
  })
  return {
    value: ledges,
    figures: ledgeFigures(
      spec,
      room,
      ledges.map((ledge, index) => ({ ledge, how: (heights[index] as Height).how })),
    ),
    checks: ledgeChecks(spec, room, ledges),
  }
}

export const lowerEdge = (ledge: Ledge): number => ledge.y - ledge.section.width / 2
export const upperEdge = (ledge: Ledge): number => ledge.y + ledge.section.width / 2

/** The short edge's reach across the leaf: [hanging end, closing end], mm. Fixings keep to it. */
export const shortReach = (ledge: Ledge): [number, number] => {
  const lost = (ledge.length - ledge.shortLength) / 2
  return [ledge.x + lost, ledge.x + ledge.length - lost]
}
