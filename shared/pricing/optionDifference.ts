import type { GateSpec } from '../gate/spec.ts'
import type { LengthUnit } from '../job/job.ts'
import { specFacts } from '../job/specFacts.ts'
import { estimateGroups, type Estimate, type EstimateGroup } from './estimate.ts'
import { writeMoney } from './moneyText.ts'
import { pence } from './pence.ts'
import { writePercent } from './percent.ts'
import type { MoneySettings } from './terms.ts'

/** An option as it is set beside another. */
export type ComparedOption = { name: string; spec: GateSpec; estimate: Estimate }

const groupWords: Record<EstimateGroup, string> = {
  timber: 'timber',
  fixings: 'fixings',
  ironmongery: 'ironmongery',
  finish: 'finish',
  making: 'making',
  hanging: 'visits and hanging',
  extras: 'extras',
}

const costOf = ({ lines }: Estimate, group: EstimateGroup): number =>
  lines.filter((line) => line.group === group).reduce((sum, line) => sum + line.pence, 0)

/** What one option costs more or less than the other, first in all, then by group of cost. */
function priceWords(from: ComparedOption, to: ComparedOption, { currency, tax }: MoneySettings): string[] {
  const unpriced = [from, to].filter(({ estimate }) => estimate.missing.length > 0)
  if (unpriced.length > 0)
    return unpriced.map(({ name }) => `${name} has lines without a price, so the two can’t be compared.`)
  const change = to.estimate.net - from.estimate.net
  if (change === 0) return [`${to.name} costs the same as ${from.name}.`]
  const before = tax.registered ? ` before ${tax.name}` : ''
  const share =
    from.estimate.net > 0
      ? ` (${writePercent(Math.round((Math.abs(change) * 10_000) / from.estimate.net))})`
      : ''
  const sum = (amount: number) => writeMoney(pence(Math.abs(amount)), currency)
  return [
    `${to.name} is ${sum(change)} ${change > 0 ? 'dearer' : 'cheaper'} than ${from.name}${before}${share}.`,
    ...estimateGroups.flatMap((group) => {
      const own = costOf(to.estimate, group) - costOf(from.estimate, group)
      return own === 0 ? [] : [`Cost of ${groupWords[group]}: ${sum(own)} ${own > 0 ? 'more' : 'less'}.`]
    }),
  ]
}

/** What differs between the two gates as entered. */
function gateWords(from: ComparedOption, to: ComparedOption, unit: LengthUnit): string[] {
  const before = new Map(specFacts(from.spec, unit))
  const after = new Map(specFacts(to.spec, unit))
  return [...new Set([...before.keys(), ...after.keys()])].flatMap((what) => {
    const [was, is] = [before.get(what) ?? 'none', after.get(what) ?? 'none']
    return was === is ? [] : [`${what[0]?.toUpperCase()}${what.slice(1)}: ${is} instead of ${was}.`]
  })
}

/**
 * How one option differs from another in plain words, the price first: 'Oak is £212.40 dearer than Redwood before VAT (18.2 %).', then each
 * group of cost, then each thing entered otherwise: 'Board timber: European oak instead of European redwood.'
 */
export const optionDifference = (
  from: ComparedOption,
  to: ComparedOption,
  { settings, unit }: { settings: MoneySettings; unit: LengthUnit },
): string[] => [...priceWords(from, to, settings), ...gateWords(from, to, unit)]
