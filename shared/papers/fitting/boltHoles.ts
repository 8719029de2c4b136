import { figureText, type FigureText } from '../../drawing/figureText.ts'
import type { HangingLeaf } from '../../gate/leaf.ts'
import type { Fitting } from '../../ironmongery/fitting.ts'
import { writeShortMm } from '../../units/writeLength.ts'
import type { Block } from '../flow.ts'
import type { JobCardInput } from '../jobCardInput.ts'
import type { Measure } from '../page.ts'
import { paragraph } from '../table.ts'

type Sized = Pick<JobCardInput, 'spec' | 'design' | 'unit'>

/** The middle of a bolt's rod across the leaf and up it, and whether it lies level; undefined where none is drawn. mm. */
function rodOf({ shapes }: Fitting) {
  const rod = shapes.find(({ part }) => part === 'rod')
  if (!rod) return undefined
  const xs = rod.outline.map(([x]) => x)
  const ys = rod.outline.map(([, y]) => y)
  const [left, right, low, high] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)]
  return { x: (left + right) / 2, y: (low + high) / 2, level: right - left > high - low }
}

/** Where a bolt's rod meets what it holds in, from the leaf's own edge or foot. */
function meets(
  fitting: Fitting,
  leaf: HangingLeaf,
  { edge, figures }: { edge: string; figures: FigureText },
): string {
  const rod = rodOf(fitting)
  if (!rod) return 'where the rod meets it'
  const { write } = figures
  if (rod.level) {
    const into = edge === 'meeting edge' && fitting.side === 'closing' ? 'other leaf' : 'post'
    return `in the ${into}, ${write(rod.y)} up from the foot`
  }
  const [from, named] = fitting.side === 'closing' ? [leaf.width - rod.x, edge] : [rod.x, 'hanging edge']
  const into = rod.y < leaf.height / 2 ? 'in the ground' : 'in the head'
  return `${into}, ${write(from)} in from the ${named}`
}

type Hole = { leaf: string; words: string }

/** Holes by leaf, those alike said once. */
function holesOf({ spec, design, unit }: Sized): Hole[] {
  const figures = figureText(unit)
  const edge = spec.leaves === 2 ? 'meeting edge' : 'closing edge'
  const holes = design.fittings.flatMap((fitting): Hole[] => {
    const leaf = design.leaves.find(({ name }) => name === fitting.leaf)
    if (fitting.kind !== 'bolt' || !leaf || fitting.socket === null) return []
    const words = `${writeShortMm(fitting.socket)} mm ${meets(fitting, leaf, { edge, figures })}`
    return [{ leaf: leaf.name === 'leaf' ? '' : `${leaf.name}: `, words }]
  })
  return holes.filter(
    (hole, i) => holes.findIndex((one) => one.leaf + one.words === hole.leaf + hole.words) === i,
  )
}

/** The hole that each bolt shoots into and where that comes when the leaf is shut, in a sentence. Nothing without bolts. */
export function boltHoles(gate: Sized, width: number, measure: Measure): Block[] {
  const holes = holesOf(gate)
  if (holes.length === 0) return []
  const words = holes.map(({ leaf, words: said }) => `${leaf}${said}`).join('; ')
  return [{ ...paragraph(`Bolt holes, with the leaf shut: ${words}.`, { width, measure }), above: 1.6 }]
}
