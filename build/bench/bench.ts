import { availableParallelism, loadavg } from 'node:os'
import { parseArgs } from 'node:util'
import { chromiumPath } from '../machine.ts'
import { buyingLong } from './buyingLong.ts'
import { buyJob, buyQuarter, buyWeek } from './buyingRows.ts'
import { cardBatch } from './cardBatch.ts'
import { cardPdf } from './cardPdf.ts'
import { designHeaviest } from './designHeaviest.ts'
import { designKeystroke } from './designKeystroke.ts'
import { priceRise } from './priceRise.ts'
import { written, type Effort, type Measured } from './row.ts'

const benches = new Map<string, (effort: Effort) => Promise<Measured>>([
  ['design-keystroke', designKeystroke],
  ['design-heaviest', designHeaviest],
  ['card-pdf', cardPdf],
  ['card-batch', cardBatch],
  ['price-rise', priceRise],
  ['buy-job', buyJob],
  ['buy-week', buyWeek],
  ['buy-quarter', buyQuarter],
])
const accepted = [...benches.keys()].join(', ')

/** Rows that belong to work still to come. Asked for by name they are refused, never made up. */
const toCome = ['search-100k']

const refusal = (name: string): string =>
  toCome.includes(name)
    ? `${name}: not yet: what it measures isn't built, accepted is one of ${accepted}`
    : `${name}: not a benchmark, accepted is one of ${accepted}`

const options = { json: { type: 'boolean' }, quick: { type: 'boolean' }, long: { type: 'boolean' } } as const

/** How much of the long counts a trial of the shape runs. */
const [allOfIt, trialOfIt] = [1, 0.004]

/** What is asked for, or a line for everything in it that can't be had. */
function asked(args: string[]) {
  const { values, tokens } = parseArgs({
    args,
    options,
    allowPositionals: true,
    strict: false,
    tokens: true,
  })
  const faults = tokens.flatMap((token) => {
    if (token.kind === 'positional') return benches.has(token.value) ? [] : [refusal(token.value)]
    if (token.kind === 'option-terminator') return []
    return Object.hasOwn(options, token.name) && token.value === undefined
      ? []
      : [`${token.rawName}: not an option, accepted is one of --json, --quick, --long`]
  })
  const named = tokens.flatMap((token) => (token.kind === 'positional' ? [token.value] : []))
  const names = named.length > 0 ? [...new Set(named)] : [...benches.keys()]
  return {
    faults,
    names,
    json: values.json === true,
    quick: values.quick === true,
    long: values.long === true,
  }
}

function tell({ row, said }: Measured): void {
  const verdict = row.holds ? 'holds' : 'MISSED'
  process.stdout.write(
    `${row.name}: ${written(row.value)} ${row.unit}, against ${row.against}; ratio ${written(row.ratio)}, aim ${row.aim}: ${verdict}\n`,
  )
  for (const line of said) process.stdout.write(`  ${line}\n`)
}

/** How busy the machine was, its other work with it: on a busy one the slowest measurements are mostly waiting for a turn. */
const machineWords = (): string =>
  `machine: ${availableParallelism()} cores, load ${written(loadavg()[0] ?? 0)} over the last minute`

/**
 * `bench [--json] [--quick] [--long] [NAME…]`: each benchmark beside something real in the same run. --quick measures too little to go
 * by, for a trial of the shape; --long counts the buying plans proven over thousands of requests after them, for the plain table. Ends with 2 on what isn't accepted, 1 without a Chromium.
 */
async function bench(): Promise<number> {
  const { faults, names, json, quick, long } = asked(process.argv.slice(2))
  for (const line of faults) process.stderr.write(`${line}\n`)
  if (faults.length > 0) return 2
  if (chromiumPath() === undefined) {
    process.stderr.write(
      'bench: measures beside a Chromium and there is none: set BRACEWORK_CHROMIUM to one\n',
    )
    return 1
  }
  const measured: Measured[] = []
  for (const name of names) {
    const one = await benches.get(name)?.({ quick })
    if (!one) continue
    measured.push(one)
    if (!json) tell(one)
  }
  const isBuying = names.some((name) => name.startsWith('buy-'))
  if (long && isBuying && !json)
    buyingLong(quick ? trialOfIt : allOfIt, (line) => process.stdout.write(`${line}\n`))
  const ending = json ? JSON.stringify(measured.map(({ row }) => row)) : machineWords()
  process.stdout.write(`${ending}\n`)
  return 0
}

process.exitCode = await bench()
