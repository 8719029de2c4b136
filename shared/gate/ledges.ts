import { toRadians } from '../units/angle.ts'
import { commonPractice, geometry, workshopSetting, type Figures } from './figures.ts'
import type { Ledge } from './leaf.ts'
import { ledgeChecks, twoLedgesUpTo } from './ledgeChecks.ts'
import type { GateSpec, LedgeEnd, Section } from './spec.ts'
import { figure, type Worked } from './worked.ts'

/** How far the outer ledges' outer edges stand from foot and top unless the person says otherwise, mm: common practice. */
export const ledgeMargin = 125

const names = { 2: ['bottom', 'top'], 3: ['bottom', 'middle', 'top'] } as const

/** How many ledges: as set, else by the heights given, else by the leaf's height. */
export function ledgeCount(ledges: GateSpec['ledges'], leafHeight: number): 2 | 3 {
  if (ledges.count !== 'auto') return ledges.count
  if (ledges.heights !== 'auto') return ledges.heights.length === 3 ? 3 : 2
  return leafHeight <= twoLedgesUpTo ? 2 : 3
}

/** What one cut end takes off the long edge to leave the short one, mm. A square end takes nothing. */
export function endLoss(end: LedgeEnd, section: Section): number {
  if (end.cut === 'square') return 0
  const across = end.cut === 'bevelled' ? section.thickness : section.width
  return across * Math.tan(toRadians(end.angle))
}

/** Centre heights of the ledges, bottom up: as given, or the outer two 125 mm in and the middle one midway between their edges. */
function centres(spec: GateSpec, leafHeight: number, sections: Section[]): number[] {
  if (spec.ledges.heights !== 'auto') return spec.ledges.heights
  const [bottom, top] = [sections[0] as Section, sections.at(-1) as Section]
  const low = ledgeMargin + bottom.width / 2
  const high = leafHeight - ledgeMargin - top.width / 2
  if (sections.length === 2) return [low, high]
  return [low, (ledgeMargin + bottom.width + leafHeight - ledgeMargin - top.width) / 2, high]
}

function heightFigure(spec: GateSpec, leafHeight: number, ledge: Ledge) {
  if (spec.ledges.heights !== 'auto')
    return figure(ledge.y, 'mm', {
      formula: 'centre height as entered',
      inputs: { entered: ledge.y },
      source: workshopSetting,
    })
  const width = ledge.section.width
  if (ledge.name === 'bottom')
    return figure(ledge.y, 'mm', {
      formula: 'margin + ledge width / 2',
      inputs: { margin: ledgeMargin, 'ledge width': width },
      source: commonPractice,
    })
  if (ledge.name === 'top')
    return figure(ledge.y, 'mm', {
      formula: 'leaf height − margin − ledge width / 2',
      inputs: { 'leaf height': leafHeight, margin: ledgeMargin, 'ledge width': width },
      source: commonPractice,
    })
  return figure(ledge.y, 'mm', {
    formula: "midway between the bottom ledge's upper edge and the top ledge's lower edge",
    inputs: {
      "bottom ledge's upper edge": ledgeMargin + spec.ledges.section.width,
      "top ledge's lower edge":
        leafHeight - ledgeMargin - (spec.ledges.topSection ?? spec.ledges.section).width,
    },
    source: commonPractice,
  })
}

function shortFigure(end: LedgeEnd, ledge: Ledge) {
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

function ledgeFigures(spec: GateSpec, leaf: { width: number; height: number }, ledges: Ledge[]): Figures {
  const { hangingInset, closingInset, end, count } = spec.ledges
  const figures: Figures = {
    'ledges.count': figure(ledges.length, 'no.', {
      formula: `two up to ${twoLedgesUpTo} mm of leaf height, three above, unless set`,
      inputs: { 'leaf height': leaf.height },
      source: count === 'auto' && spec.ledges.heights === 'auto' ? commonPractice : workshopSetting,
    }),
  }
  for (const ledge of ledges) {
    figures[`ledge.${ledge.name}.y`] = heightFigure(spec, leaf.height, ledge)
    figures[`ledge.${ledge.name}.length`] = figure(ledge.length, 'mm', {
      formula: 'leaf width − hanging inset − closing inset',
      inputs: { 'leaf width': leaf.width, 'hanging inset': hangingInset, 'closing inset': closingInset },
      source: geometry,
    })
    figures[`ledge.${ledge.name}.shortLength`] = shortFigure(end, ledge)
  }
  return figures
}

/**
 * The ledges of one leaf, bottom → top. The long edge runs from inset to inset (the face against the boards when bevelled, the
 * lower edge when splayed). Leaf sizes in mm.
 * A ledge of 145 × 28 on a 900 leaf with 10 mm insets, bevelled 15°, is 880 long and 864.995 on its back.
 */
export function layLedges(spec: GateSpec, leaf: { width: number; height: number }): Worked<Ledge[]> {
  const { section, topSection = section, hangingInset, closingInset, end } = spec.ledges
  const count = ledgeCount(spec.ledges, leaf.height)
  const sections = names[count].map((name) => (name === 'top' ? topSection : section))
  const length = leaf.width - hangingInset - closingInset
  const at = centres(spec, leaf.height, sections)
  const ledges = names[count].map((name, index): Ledge => {
    const own = sections[index] as Section
    return {
      name,
      y: at[index] as number,
      x: hangingInset,
      length,
      shortLength: length - 2 * endLoss(end, own),
      section: own,
    }
  })
  return {
    value: ledges,
    figures: ledgeFigures(spec, leaf, ledges),
    checks: ledgeChecks(spec, leaf, ledges),
  }
}

export const lowerEdge = (ledge: Ledge): number => ledge.y - ledge.section.width / 2
export const upperEdge = (ledge: Ledge): number => ledge.y + ledge.section.width / 2

/** The short edge's reach across the leaf: [hanging end, closing end], mm. Fixings keep to it. */
export const shortReach = (ledge: Ledge): [number, number] => {
  const lost = (ledge.length - ledge.shortLength) / 2
  return [ledge.x + lost, ledge.x + ledge.length - lost]
}
