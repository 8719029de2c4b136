import type { DrillChoice, Hole } from '../gate/holes.ts'
import { writeShortMm } from '../units/writeLength.ts'
import type { Block } from './flow.ts'
import type { Measure } from './page.ts'
import { heading, table, type Cell } from './table.ts'

/** The drill to take from the set, with the worked size where they differ: '3 (2.9)'. */
function drill(choice: DrillChoice | null): string {
  if (choice === null) return '–'
  const exact = writeShortMm(choice.exact)
  if (choice.drill === null) return `${exact}: no drill near`
  const taken = writeShortMm(choice.drill, 2)
  return taken === exact ? taken : `${taken} (${exact})`
}

/** Holes by what they go through: the drill to take, the worked size beside it in brackets where the set has no such drill. mm. */
export function holeTable(holes: Hole[], width: number, measure: Measure): Block[] {
  if (holes.length === 0) return []
  const many = holes.some(({ quantity }) => quantity > 99) ? 3 : 0
  const leads = holes.some(({ lead }) => drill(lead).length > 7) ? 3 : 0
  const columns = [
    { title: 'Through', width: 17 },
    { title: 'Fixing', width: width - 70 - many - leads },
    { title: 'No.', width: 10 + many, align: 'end' as const, weight: 'semibold' as const },
    { title: 'Clear', width: 14, align: 'end' as const, weight: 'semibold' as const },
    { title: 'Lead', width: 16 + leads, align: 'end' as const, weight: 'semibold' as const },
    { title: 'Sink', width: 13, align: 'end' as const, weight: 'semibold' as const },
  ]
  const rows = holes.map((hole): Cell[] => [
    hole.through,
    hole.fixing,
    String(hole.quantity),
    drill(hole.clearance),
    drill(hole.lead),
    drill(hole.countersink),
  ])
  return [heading('Holes: drill to take, mm'), ...table({ columns, rows }, measure)]
}
