import type { Block } from './flow.ts'
import type { Measure } from './page.ts'
import { lineHeight, linesAt, setLines } from './words.ts'

/** A figure with its words over it: { label: 'horn at each end', value: '45' }. Lines of the value are set in one weight. */
export type Fact = { label: string; value: string }

const [labelSize, valueSize] = [11, 13]

/** Figures in a grid, their words over them; empty without any. across: how many side by side. */
export function factGrid(
  facts: Fact[],
  { width, across, measure }: { width: number; across: number; measure: Measure },
): Block[] {
  const cell = width / across
  const rows = Array.from({ length: Math.ceil(facts.length / across) }, (_, i) =>
    facts.slice(i * across, (i + 1) * across),
  )
  return rows.map((row): Block => {
    const set = row.map(({ label, value }) => ({
      label: setLines([{ text: label, weight: 'regular' }], { width: cell - 4, size: labelSize, measure }),
      value: setLines([{ text: value, weight: 'semibold' }], { width: cell - 4, size: valueSize, measure }),
    }))
    const deepest = Math.max(...set.map(({ label }) => label.length))
    const over = deepest * lineHeight(labelSize)
    const under = Math.max(...set.map(({ value }) => value.length)) * lineHeight(valueSize)
    return {
      height: over + under + 1.2,
      above: 1.2,
      marks: (x, y) =>
        set.flatMap(({ label, value }, i) => [
          ...linesAt(label, {
            x: x + i * cell,
            y: y + 3.6 + (deepest - label.length) * lineHeight(labelSize),
            size: labelSize,
            ink: 'grey',
          }),
          ...linesAt(value, { x: x + i * cell, y: y + over + 4.2, size: valueSize, ink: 'black' }),
        ]),
    }
  })
}

/** Blocks with none of them on another page than the next. */
export const keptTogether = (blocks: Block[]): Block[] =>
  blocks.map((block, i) => (i < blocks.length - 1 ? { ...block, withNext: true } : block))
