import { parseArgs } from 'node:util'
import type { Span } from './longCount.ts'

/** What a run of the benchmarks is asked for: rows and long counts by name; json, quick; span: which of each count's requests. */
export type Asked = {
  faults: string[]
  rows: string[]
  counts: string[]
  json: boolean
  quick: boolean
  span: Span | undefined
}

/** The names there are. toCome: rows whose work isn't built, refused by name and never made up. */
export type Names = { rows: readonly string[]; counts: readonly string[]; toCome: readonly string[] }

const options = {
  json: { type: 'boolean' },
  quick: { type: 'boolean' },
  long: { type: 'boolean' },
  seeds: { type: 'string' },
} as const

function refusal(name: string, { rows, counts, toCome }: Names, isLong: boolean): string[] {
  if (rows.includes(name) || (isLong && counts.includes(name))) return []
  const accepted = `accepted is one of ${[...rows, ...(isLong ? counts : [])].join(', ')}`
  if (counts.includes(name)) return [`${name}: a long count, accepted with --long`]
  return [
    toCome.includes(name)
      ? `${name}: not yet: what it measures isn't built, ${accepted}`
      : `${name}: not a benchmark, ${accepted}`,
  ]
}

/** A span as it is typed: 1-500. */
function spanIn(text: string): Span | undefined {
  const [, from, to] = /^(\d{1,6})-(\d{1,6})$/.exec(text) ?? []
  const span = { from: Number(from), to: Number(to) }
  return span.from >= 1 && span.to >= span.from ? span : undefined
}

function optionFaults(tokens: { rawName: string; name: string; value?: unknown }[]): string[] {
  return tokens.flatMap(({ rawName, name, value }) => {
    if (name === 'seeds')
      return typeof value === 'string' && spanIn(value)
        ? []
        : [`--seeds: got ${String(value ?? 'nothing')}, accepted is the first and last of a count, as 1-500`]
    return Object.hasOwn(options, name) && value === undefined
      ? []
      : [`${rawName}: not an option, accepted is one of --json, --quick, --long, --seeds`]
  })
}

/** Reads what is asked for, with a line for everything in it that can't be had. Counts named alone are run without the rows. */
export function askedOf(args: string[], names: Names): Asked {
  const read = parseArgs({ args, options, allowPositionals: true, strict: false, tokens: true })
  const { json, quick, long, seeds } = read.values
  const named = [...new Set(read.positionals)]
  const isLong = long === true
  const inBoth = (list: readonly string[]) => list.filter((name) => named.includes(name))
  const isBuying = named.length === 0 || named.some((name) => name.startsWith('buy-'))
  const counts = isLong && isBuying ? [...names.counts] : isLong ? inBoth(names.counts) : []
  return {
    faults: [
      ...named.flatMap((name) => refusal(name, names, isLong)),
      ...optionFaults(read.tokens.flatMap((token) => (token.kind === 'option' ? [token] : []))),
    ],
    rows: named.length > 0 ? named.filter((name) => names.rows.includes(name)) : [...names.rows],
    counts,
    json: json === true,
    quick: quick === true,
    span: typeof seeds === 'string' ? spanIn(seeds) : undefined,
  }
}
