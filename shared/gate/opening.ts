import { writeShortMm } from '../units/writeLength.ts'
import type { Check } from './checks.ts'
import { geometry, type Figure, type Figures } from './figures.ts'
import type { GateSpec } from './spec.ts'
import { figure, type Worked } from './worked.ts'

/** An opening as it was surveyed. */
export type Opening = Extract<GateSpec['size'], { from: 'opening' }>

/** Size of the whole hanging, before a pair or a stable door divides it: leaf width (of each leaf) and height, mm. */
export type LeafSize = { width: number; height: number }

/** Differences of a surveyed opening above which the joiner is told, mm: common practice. */
export const worthSaying = 5

const mm = (value: number, formula: string, inputs: Record<string, number>): Figure =>
  figure(value, 'mm', { formula, inputs, source: geometry })

function leafFigures(size: Opening, leaf: LeafSize, leaves: 1 | 2): Figures {
  const inputs = { 'least width': Math.min(...size.widths), 'hanging gap': size.hangingGap }
  return {
    'leaf.width':
      leaves === 1
        ? mm(leaf.width, 'least of the three widths − hanging gap − closing gap', {
            ...inputs,
            'closing gap': size.closingGap,
          })
        : mm(leaf.width, '(least of the three widths − 2 × hanging gap − meeting gap) / 2', {
            ...inputs,
            'meeting gap': size.meetingGap ?? 0,
          }),
    'leaf.height': mm(leaf.height, 'least of the two heights − ground gap − head gap', {
      'least height': Math.min(...size.heights),
      'ground gap': size.groundGap,
      'head gap': size.headGap ?? 0,
    }),
  }
}

/** How far the opening's sizes differ, and the widest gap that comes of it. */
function taperFigures(size: Opening, leaves: 1 | 2): Figures {
  const [least, greatest] = [Math.min(...size.widths), Math.max(...size.widths)]
  const taper = greatest - least
  const gap = leaves === 1 ? size.closingGap : (size.meetingGap ?? 0)
  return {
    'opening.taper': mm(taper, 'greatest width − least width', {
      'greatest width': greatest,
      'least width': least,
    }),
    'opening.widestGap': mm(gap + taper, leaves === 1 ? 'closing gap + taper' : 'meeting gap + taper', {
      gap,
      taper,
    }),
    'opening.fall': mm(Math.abs(size.heights[0] - size.heights[1]), 'difference of the two heights', {
      'hanging side': size.heights[0],
      'closing side': size.heights[1],
    }),
  }
}

function surveyFigures(survey: GateSpec['survey']): Figures {
  const figures: Figures = {}
  if (survey?.diagonals)
    figures['opening.outOfSquare'] = figure(Math.abs(survey.diagonals[0] - survey.diagonals[1]), 'mm', {
      formula: 'difference of the two diagonals',
      inputs: { first: survey.diagonals[0], second: survey.diagonals[1] },
      source: geometry,
    })
  if (survey?.plumb)
    figures['opening.outOfPlumb'] = figure(
      Math.max(Math.abs(survey.plumb[0]), Math.abs(survey.plumb[1])),
      'mm',
      {
        formula: 'the greater of the two posts out of plumb',
        inputs: { 'hanging post': survey.plumb[0], 'closing post': survey.plumb[1] },
        source: geometry,
      },
    )
  return figures
}

/** What is said of a survey whose differences are worth saying: by which figure, in which words, and what to do. */
const sayings: Pick<Check, 'id' | 'message' | 'remedy' | 'field'>[] = [
  {
    id: 'opening-taper',
    message: 'The opening’s widths differ by',
    remedy: 'Scribe a fillet to one post, or accept the widest gap; never force the leaf.',
    field: 'size.widths',
  },
  {
    id: 'opening-fall',
    message: 'The opening’s heights differ by',
    remedy: 'Let the foot follow the ground, or accept the wider ground gap at one side.',
    field: 'size.heights',
  },
  {
    id: 'opening-out-of-square',
    message: 'The opening’s diagonals differ by',
    remedy: 'Make the leaf square and take up the difference in the gaps.',
    field: 'survey.diagonals',
  },
  {
    id: 'opening-out-of-plumb',
    message: 'A post is out of plumb by',
    remedy: 'Plumb the post, or pack the hinges so that the pins stand upright over each other.',
    field: 'survey.plumb',
  },
]

const figureOf: Record<string, string> = {
  'opening-taper': 'opening.taper',
  'opening-fall': 'opening.fall',
  'opening-out-of-square': 'opening.outOfSquare',
  'opening-out-of-plumb': 'opening.outOfPlumb',
}

function surveyChecks(figures: Figures): Check[] {
  return sayings.flatMap(({ id, message, remedy, field }): Check[] => {
    const from = figureOf[id] ?? ''
    const value = figures[from]?.value ?? 0
    if (value <= worthSaying) return []
    const widest =
      id === 'opening-taper'
        ? `; the widest gap comes to ${writeShortMm(figures['opening.widestGap']?.value ?? 0)} mm`
        : ''
    return [
      {
        id,
        level: 'caution',
        message: `${message} ${writeShortMm(value)} mm${widest}.`,
        figures: [from],
        remedy,
        field,
      },
    ]
  })
}

/** A leaf that the gaps leave nothing of. */
function nothingLeft(size: LeafSize): Check[] {
  return (['width', 'height'] as const)
    .filter((side) => !(size[side] > 0))
    .map((side) => ({
      id: 'part-no-size',
      level: 'stop',
      message: `The gaps leave a leaf ${writeShortMm(size[side])} mm ${side === 'width' ? 'wide' : 'high'}.`,
      figures: [`leaf.${side}`],
      remedy:
        side === 'width'
          ? 'Lessen the gaps or measure the widths again.'
          : 'Lessen the ground or head gap, or measure the heights again.',
      field: side === 'width' ? 'size.widths' : 'size.heights',
    }))
}

/**
 * Leaf size from a surveyed opening: three widths, two heights [hanging side, closing side], gaps, all mm.
 * 915, 912, 918 wide with 6 and 10 mm gaps gives a leaf of 896.
 */
export function fromOpening(spec: GateSpec, size: Opening): Worked<LeafSize> {
  const least = Math.min(...size.widths)
  const leaf = {
    width:
      spec.leaves === 1
        ? least - size.hangingGap - size.closingGap
        : (least - 2 * size.hangingGap - (size.meetingGap ?? 0)) / 2,
    height: Math.min(...size.heights) - size.groundGap - (size.headGap ?? 0),
  }
  const figures = {
    ...leafFigures(size, leaf, spec.leaves),
    ...taperFigures(size, spec.leaves),
    ...surveyFigures(spec.survey),
  }
  return { value: leaf, figures, checks: [...nothingLeft(leaf), ...surveyChecks(figures)] }
}
