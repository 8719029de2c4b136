import { parseArgs } from 'node:util'
import { cardPdf } from './cardPdf.ts'
import { designKeystroke } from './designKeystroke.ts'
import { written, type Effort, type Measured } from './row.ts'

const benches: Record<string, (effort: Effort) => Promise<Measured>> = {
  'design-keystroke': designKeystroke,
  'card-pdf': cardPdf,
}

/** Rows that belong to work still to come. Asked for by name they are refused, never made up. */
const toCome = ['design-heaviest', 'price-rise', 'buy-job', 'buy-week', 'buy-quarter', 'search-100k']

const refusals = (names: readonly string[]): string[] =>
  names
    .filter((name) => !Object.hasOwn(benches, name))
    .map((name) =>
      toCome.includes(name)
        ? `${name}: not yet: what it measures isn't built, accepted is one of ${Object.keys(benches).join(', ')}`
        : `${name}: not a benchmark, accepted is one of ${Object.keys(benches).join(', ')}`,
    )

function tell({ row, said }: Measured): void {
  const verdict = row.holds ? 'holds' : 'MISSED'
  process.stdout.write(
    `${row.name}: ${written(row.value)} ${row.unit}, against ${row.against}; ratio ${written(row.ratio)}, aim ${row.aim}: ${verdict}\n`,
  )
  for (const line of said) process.stdout.write(`  ${line}\n`)
}

/** `bench [--json] [--quick] [--long] [NAME…]`: each benchmark beside something real in the same run. */
async function bench(): Promise<number> {
  const { values, positionals } = parseArgs({
    options: { json: { type: 'boolean' }, quick: { type: 'boolean' }, long: { type: 'boolean' } },
    allowPositionals: true,
  })
  const refused = refusals(positionals)
  for (const line of refused) process.stderr.write(`${line}\n`)
  if (refused.length > 0) return 2
  const names = positionals.length > 0 ? positionals : Object.keys(benches)
  const measured: Measured[] = []
  for (const name of names) {
    const one = await (benches[name] as (effort: Effort) => Promise<Measured>)({
      quick: values.quick ?? false,
    })
    measured.push(one)
    if (!values.json) tell(one)
  }
  if (values.json) process.stdout.write(`${JSON.stringify(measured.map(({ row }) => row))}\n`)
  return 0
}

process.exitCode = await bench()
