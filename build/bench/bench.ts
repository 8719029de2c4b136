import { availableParallelism, loadavg } from 'node:os'
import { chromiumPath } from '../machine.ts'
import { askedOf } from './asked.ts'
import { buyMemory } from './buyMemory.ts'
import { buyStop } from './buyStop.ts'
import { growth } from './buyingGrowth.ts'
import { seededCounts } from './buyingLong.ts'
import { publishedCounts } from './buyingPublished.ts'
import { buyJob, buyQuarter, buyWeek } from './buyingRows.ts'
import { cardBatch } from './cardBatch.ts'
import { cardPdf } from './cardPdf.ts'
import { designHeaviest } from './designHeaviest.ts'
import { designKeystroke } from './designKeystroke.ts'
import type { LongCount, Span } from './longCount.ts'
import { boardLarge, openLarge } from './openLargeRows.ts'
import { priceRise } from './priceRise.ts'
import { written, type Effort, type Measured } from './row.ts'
import { screenSize } from './screenSize.ts'
import { searchLarge } from './searchLarge.ts'
import { startLarge } from './startLarge.ts'
import { windowStall } from './windowStall.ts'

const benches = new Map<string, (effort: Effort) => Promise<Measured>>([
  ['design-keystroke', designKeystroke],
  ['design-heaviest', designHeaviest],
  ['card-pdf', cardPdf],
  ['card-batch', cardBatch],
  ['price-rise', priceRise],
  ['buy-job', buyJob],
  ['buy-week', buyWeek],
  ['buy-quarter', buyQuarter],
  ['buy-memory', buyMemory],
  ['buy-stop', buyStop],
  ['search-100k', searchLarge],
  ['start-100k', startLarge],
  ['open-100k', openLarge],
  ['board-100k', boardLarge],
  ['window-stall', windowStall],
  ['screen-size', screenSize],
])

const longCounts = new Map<string, LongCount>([...seededCounts, ...publishedCounts, ['growth', growth]])

/** Rows that belong to work still to come. */
const toCome: string[] = []

/** How much of the long counts a trial of the shape runs. */
const trial: Span = { from: 1, to: 2 }

const print = (line: string): void => void process.stdout.write(`${line}\n`)

function tell({ row, said }: Measured): void {
  const verdict = row.holds ? 'holds' : 'MISSED'
  print(
    `${row.name}: ${written(row.value)} ${row.unit}, against ${row.against}; ratio ${written(row.ratio)}, aim ${row.aim}: ${verdict}`,
  )
  for (const line of said) print(`  ${line}`)
}

/** How busy the machine was, its other work with it: on a busy one the slowest measurements are mostly waiting for a turn. */
const machineWords = (): string =>
  `machine: ${availableParallelism()} cores, load ${written(loadavg()[0] ?? 0)} over the last minute`

/**
 * `bench [--json] [--quick] [--long] [--seeds A-B] [NAME…]`: each benchmark beside something real in the same run. --quick measures too little
 * to go by, for a trial of the shape; --long adds what takes minutes or hours (buying plans proven over thousands of requests, published
 * instances, growth), for the plain table; named there, a count is run by itself, --seeds saying which of it. Ends with 2 on what isn't accepted, 1
 * without a Chromium.
 */
async function bench(): Promise<number> {
  const names = { rows: [...benches.keys()], counts: [...longCounts.keys()], toCome }
  const { faults, rows, counts, json, quick, span } = askedOf(process.argv.slice(2), names)
  for (const line of faults) process.stderr.write(`${line}\n`)
  if (faults.length > 0) return 2
  if (rows.length > 0 && chromiumPath() === undefined) {
    process.stderr.write(
      'bench: measures beside a Chromium and there is none: set BRACEWORK_CHROMIUM to one\n',
    )
    return 1
  }
  const measured: Measured[] = []
  for (const name of rows) {
    const one = await benches.get(name)?.({ quick })
    if (!one) continue
    measured.push(one)
    if (!json) tell(one)
  }
  if (!json)
    for (const name of counts) await longCounts.get(name)?.(span ?? (quick ? trial : undefined), print)
  print(json ? JSON.stringify(measured.map(({ row }) => row)) : machineWords())
  return 0
}

process.exitCode = await bench()
