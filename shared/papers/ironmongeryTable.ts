import { figureText } from '../drawing/figureText.ts'
import type { Drilling, Fitting } from '../ironmongery/fitting.ts'
import type { Ironmongery } from '../gate/spec.ts'
import { writeShortMm } from '../units/writeLength.ts'
import type { Block } from './flow.ts'
import type { JobCardInput } from './jobCardInput.ts'
import { bothLeaves, capital } from './leafWords.ts'
import type { Measure } from './page.ts'
import { heading, table, type Cell } from './table.ts'

/** '2 bolt holes 12 right through': the drill to take, and how deep, mm. */
function drillWords({ what, count, size, depth }: Drilling): string {
  const drill = writeShortMm(size.drill ?? size.exact, 2)
  return `${count} ${what}${count === 1 ? '' : 's'} ${drill}, ${depth === null ? 'through' : `${writeShortMm(depth)} deep`}`
}

/** 'socket 25, 905 from hanging edge, 110 deep'. */
function socketWords({ socket, socketPlace }: Fitting): string[] {
  if (socket === null) return []
  if (!socketPlace) return [`socket ${writeShortMm(socket)}`]
  const { across, depth } = socketPlace
  const at = across === null ? '' : `, ${writeShortMm(across)} from hanging edge`
  return [`socket ${writeShortMm(socket)}${at}, ${writeShortMm(depth)} deep`]
}

const drilled = (fitting: Fitting): string =>
  [...fitting.drillings.map(drillWords), ...socketWords(fitting)].join('; ')

/** Pieces of one kind that sit alike on one leaf, one over another. */
type Set = { first: Fitting; heights: { mm: number; on: string }[]; leaves: Fitting['leaf'][] }

const placeOf = ({ entry, leaf, side, surface }: Fitting): string => [entry, leaf, side, surface].join('|')

function setsOf(fittings: readonly Fitting[]): Set[] {
  const byPlace = new Map<string, Fitting[]>()
  for (const fitting of fittings)
    byPlace.set(placeOf(fitting), [...(byPlace.get(placeOf(fitting)) ?? []), fitting])
  const sets = new Map<string, Set>()
  for (const same of byPlace.values()) {
    const [first] = same
    if (!first) continue
    const heights = same.map(({ height, on }) => ({ mm: height, on })).sort((a, b) => a.mm - b.mm)
    const key = JSON.stringify([first.entry, first.side, first.surface, drilled(first), heights])
    const known = sets.get(key)
    if (known) known.leaves.push(first.leaf)
    else sets.set(key, { first, heights, leaves: [first.leaf] })
  }
  return [...sets.values()].sort((a, b) => a.first.entry - b.first.entry)
}

function where({ first, leaves }: Set, single: boolean): string {
  const leaf = single ? '' : `${leaves.length > 1 ? bothLeaves(leaves) : leaves[0]}, `
  return capital(`${leaf}${first.surface}, ${first.side} edge`)
}

function rowOf(set: Set, { single, unit }: { single: boolean; unit: JobCardInput['unit'] }): Cell[] {
  const { write, other } = figureText(unit)
  const heights = set.heights.map(({ mm, on }) => `${write(mm)} (${other(mm)})${on === '' ? '' : ` ${on}`}`)
  return [
    { tick: true },
    set.first.name,
    String(set.heights.length * set.leaves.length),
    where(set, single),
    heights.join('; '),
    drilled(set.first) || '–',
  ]
}

/** Pieces listed for the gate that the calculation gives no place to: they are fetched all the same. */
const unplaced = (listed: readonly Ironmongery[], fittings: readonly Fitting[]): Cell[][] =>
  listed.flatMap((piece, entry): Cell[][] => {
    const left = piece.quantity - fittings.filter((fitting) => fitting.entry === entry).length
    return left > 0 ? [[{ tick: true }, piece.name, String(left), 'where it is wanted', '–', '–']] : []
  })

/** Every piece of ironmongery: where it sits, how high its middle is from the leaf's foot, and what to drill for it (mm). Nothing when none is listed. */
export function ironmongeryTable(
  { spec, design, unit }: Pick<JobCardInput, 'spec' | 'design' | 'unit'>,
  width: number,
  measure: Measure,
): Block[] {
  const { fittings, leaves } = design
  const rows = [
    ...setsOf(fittings).map((set) => rowOf(set, { single: leaves.length === 1, unit })),
    ...unplaced(spec.ironmongery, fittings),
  ]
  if (rows.length === 0) return []
  const columns = [
    { title: '', width: 9 },
    { title: 'Piece', width: 36 },
    { title: 'No.', width: 11, align: 'end' as const, size: 13, weight: 'semibold' as const },
    { title: 'Where', width: 37 },
    { title: 'Middle, from the foot', width: 45, weight: 'semibold' as const },
    { title: 'Drill, mm; deep at most', width: width - 138 },
  ]
  return [heading('Ironmongery'), ...table({ columns, rows }, measure)]
}
