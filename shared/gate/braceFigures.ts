import { geometry, type Figure, type Figures } from './figures.ts'
import { betweenLedges, type Brace } from './leaf.ts'
import { figure } from './worked.ts'

/** What a brace's run was left from: the ledge's length, what a splayed end takes off, and both setbacks, mm. */
export type RunSource = { ledgeLength: number; splay: number; footSetback: number; headSetback: number }

const mm = (value: number, formula: string, inputs: Record<string, number>): Figure =>
  figure(value, 'mm', { formula, inputs, source: geometry })

function bayFigures(brace: Brace, from: RunSource, lowerEdge: number): Record<string, Figure> {
  return {
    clearHeight: mm(brace.clearHeight, 'upper ledge’s lower edge − lower ledge’s upper edge', {
      'upper ledge’s lower edge': lowerEdge + brace.clearHeight,
      'lower ledge’s upper edge': lowerEdge,
    }),
    run: mm(brace.run, 'ledge length − splay − foot setback − head setback', {
      'ledge length': from.ledgeLength,
      splay: from.splay,
      'foot setback': from.footSetback,
      'head setback': from.headSetback,
    }),
  }
}

function sizeFigures(brace: Brace, spanned: number): Record<string, Figure> {
  const { angle, run } = brace
  const { width } = brace.section
  return {
    angle: figure(angle, '°', {
      formula: 'atan2(clear height, run) + asin(width / √(clear height² + run²))',
      inputs: { 'clear height': brace.clearHeight, run, width },
      source: geometry,
    }),
    sawSetting: figure(brace.sawSetting, '°', {
      formula: '90° − angle',
      inputs: { angle },
      source: geometry,
    }),
    edgeLength: mm(brace.edgeLength, 'height spanned / sin(angle)', { 'height spanned': spanned, angle }),
    length: mm(brace.length, 'height spanned / sin(angle) + width / tan(angle)', {
      'height spanned': spanned,
      width,
      angle,
    }),
    contact: mm(brace.contact, 'width / sin(angle)', { width, angle }),
  }
}

/**
 * Every figure of one brace: 'brace.single.angle', 'brace.upper.length' and the like. lowerEdge is the height at which its slope
 * starts, the upper edge of the ledge that the foot of the whole line stands on, mm.
 */
export function figuresOfBrace(brace: Brace, from: RunSource, lowerEdge: number): Figures {
  const [foot, , head] = betweenLedges(brace)
  const spanned = (head?.[1] ?? 0) - (foot?.[1] ?? 0)
  const figures = { ...bayFigures(brace, from, lowerEdge), ...sizeFigures(brace, spanned) }
  return Object.fromEntries(
    Object.entries(figures).map(([name, made]) => [`brace.${brace.name}.${name}`, made]),
  )
}
