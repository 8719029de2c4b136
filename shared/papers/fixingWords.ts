import type { Fixing, Leaf } from '../gate/leaf.ts'
import { figureText } from '../drawing/figureText.ts'
import type { LengthUnit } from '../job/job.ts'
import { capital, listed } from './leafWords.ts'

/** Whose places are written out: all, those on the ledges, or none. */
export type FixingPlaces = 'all' | 'on ledges' | 'counted'

type Row = { y: number; xs: number[] }

function rowsOf(fixings: Fixing[]): Row[] {
  const rows: Row[] = []
  for (const fixing of fixings) {
    const row = rows.find((known) => Math.abs(known.y - fixing.y) < 1e-6)
    if (row) row.xs.push(fixing.x)
    else rows.push({ y: fixing.y, xs: [fixing.x] })
  }
  for (const row of rows) row.xs.sort((a, b) => a - b)
  return rows.sort((a, b) => b.y - a.y)
}

/**
 * Where the fixings go, in sentences: along each ledge from the hanging edge, with how far the row stands from its centre line;
 * ledges with the same places together; on a brace each place from the hanging edge and from the foot of the leaf. What isn't
 * written out is counted, and left to the drawing.
 */
export function fixingWords(leaf: Leaf, unit: LengthUnit, written: FixingPlaces = 'all'): string[] {
  if (written === 'counted') return [counted(leaf)]
  const { write } = figureText(unit)
  const alike = new Map<string, string[]>()
  for (const ledge of leaf.ledges) {
    const member = `${ledge.name} ledge`
    const own = leaf.fixings.filter((fixing) => fixing.member === member)
    const words = rowsOf(own).map(({ y, xs }) => {
      const off = y - ledge.y
      const where =
        Math.abs(off) < 0.05
          ? 'on the centre line'
          : `${write(Math.abs(off))} ${off > 0 ? 'above' : 'below'} centre`
      return `${where}: ${xs.map(write).join(', ')}`
    })
    const key = `${own.length} each; from the hanging edge, ${words.join('; ')}.`
    alike.set(key, [...(alike.get(key) ?? []), ledge.name])
  }
  const ledges = [...alike].map(
    ([places, names]) =>
      `${capital(listed(names))} ${names.length > 1 ? `ledges, ${places}` : `ledge, ${places.replace(' each', '')}`}`,
  )
  const onBraces = leaf.fixings.filter((fixing) => fixing.joins === 'brace').length
  if (written === 'on ledges' && onBraces > 0)
    return [...ledges, `Through the braces, ${onBraces}, where the drawing shows them.`]
  const braces = leaf.braces.map((brace) => {
    const own = leaf.fixings.filter((fixing) => fixing.member === `${brace.name} brace`)
    const places = own.map((fixing) => `${write(fixing.x)} / ${write(fixing.y)}`)
    const name = brace.name === 'single' ? 'Brace' : `${capital(brace.name)} brace`
    return own.length === 0
      ? ''
      : `${name}, ${own.length}; from the hanging edge / from the foot: ${places.join(', ')}.`
  })
  return [...ledges, ...braces].filter((words) => words !== '')
}

function counted(leaf: Leaf): string {
  const members = [...new Set(leaf.fixings.map((fixing) => fixing.member))]
  const counts = members.map((member) => {
    const count = leaf.fixings.filter((fixing) => fixing.member === member).length
    return `${member.replace(/^single /, '')} ${count}`
  })
  return `${capital(listed(counts))}, where the drawing shows them.`
}
