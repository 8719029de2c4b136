import { figureText } from '../drawing/figureText.ts'
import type { HangingLeaf } from '../gate/leaf.ts'
import { keptTogether } from './factGrid.ts'
import type { Block } from './flow.ts'
import type { JobCardInput } from './jobCardInput.ts'
import { bothLeaves, capital, saidByLeaf } from './leafWords.ts'
import type { Measure } from './page.ts'
import { heading, paragraph, table, type Cell } from './table.ts'

/** A mass to the half kilogram, a force to ten newtons: they are right to a tenth at best. */
const halfKg = (mass: number): string => String(Math.round(mass * 2) / 2)
const tens = (force: number): string => String(Math.round(force / 10) * 10)

const pullOf = ({ hinges }: HangingLeaf): number => Math.max(...hinges.map(({ pullN }) => pullN))

function windWords(leaves: readonly HangingLeaf[]): string {
  const said = saidByLeaf(leaves, ({ windN }) => windN)
  const pushed = said.flatMap(({ who, value }) =>
    value === null
      ? []
      : [
          `${tens(value)} N${who === '' ? '' : ` on ${who === capital(bothLeaves(leaves.map(({ name }) => name))) ? 'each' : `the ${who.toLowerCase()}`}`}`,
        ],
  )
  return pushed.length === 0 ? '' : `The gust given pushes the shut gate with ${pushed.join(', ')}.`
}

/** What each leaf weighs, where its weight hangs, and what its hinges carry. Aids to judgement, and they say so. */
export function weightBlocks(
  { design, unit }: Pick<JobCardInput, 'design' | 'unit'>,
  width: number,
  measure: Measure,
): Block[] {
  const { leaves } = design
  const { write } = figureText(unit)
  const name = leaves.length > 1 ? 24 : 2
  const each = (width - name) / 4
  const end = { width: each, align: 'end' as const }
  const columns = [
    { title: '', width: name },
    { title: 'Weight, kg', ...end, size: 13, weight: 'semibold' as const },
    { title: 'Pull at top hinge, N', ...end, weight: 'semibold' as const },
    { title: 'Weight a hinge, N', ...end, weight: 'semibold' as const },
    { title: 'Centre from hinges', ...end },
  ]
  const rows = leaves.map((leaf): Cell[] => [
    leaf.name === 'leaf' ? '' : capital(leaf.name),
    halfKg(leaf.massKg),
    tens(pullOf(leaf)),
    tens(leaf.hinges[0]?.shareN ?? 0),
    write(leaf.centre.x),
  ])
  const note = [
    'Give or take a tenth; any one hinge may carry the whole weight.',
    windWords(design.leaves),
    'Aids to judgement: ask an engineer for large, public or powered gates.',
  ]
  return keptTogether([
    heading('Weight and hinges'),
    ...table({ columns, rows, followed: true }, measure),
    paragraph(note.filter((words) => words !== '').join(' '), { width, measure }),
  ])
}
