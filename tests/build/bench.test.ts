import { spawn } from 'node:child_process'
import { text } from 'node:stream/consumers'
import { describe, expect, it } from 'vitest'
import { loadFonts } from '../../electron/fonts.ts'
import { measureWith } from '../../electron/paint/wordRuns.ts'
import { cardInput, standardGate } from '../../build/bench/cardInput.ts'
import { cardPage } from '../../build/bench/cardPage.ts'
import { exampleSpecs } from '../../build/bench/exampleSpecs.ts'
import { keystroke, typedSpecs } from '../../build/bench/keystroke.ts'
import { median, quantile } from '../../build/bench/row.ts'
import { variedSpecs } from '../../build/bench/variedSpecs.ts'
import { inProject } from '../../build/paths.ts'
import { jobCard } from '../../shared/papers/jobCard.ts'

/** Runs the benchmarks in a process of their own; the tests' own goes on answering meanwhile. */
async function run(args: string[], env: Record<string, string> = {}) {
  const child = spawn(process.execPath, [inProject('build/bench/bench.ts'), ...args], {
    env: { ...process.env, ...env },
    stdio: ['ignore', 'pipe', 'pipe'],
  })
  const ended = new Promise<number | null>((resolve) => child.once('close', resolve))
  const [stdout, stderr, status] = await Promise.all([text(child.stdout), text(child.stderr), ended])
  return { status, stdout, stderr }
}

const names = [
  'design-keystroke',
  'design-heaviest',
  'card-pdf',
  'card-batch',
  'price-rise',
  'buy-job',
  'buy-week',
  'buy-quarter',
  'buy-memory',
  'buy-stop',
  'search-100k',
  'start-100k',
  'open-100k',
  'board-100k',
  'window-stall',
  'screen-size',
]
const units = new Map([
  ['buy-quarter', '% over the bound'],
  ['buy-memory', 'MB'],
  ['screen-size', 'KB gzip'],
])

describe('the benchmarks', () => {
  it('print one row each and nothing else for a program', { timeout: 300_000 }, async () => {
    const { status, stdout } = await run(['--json', '--quick', '--long'])
    expect(status).toBe(0)
    const rows = JSON.parse(stdout) as Record<string, unknown>[]
    expect(rows.map((row) => row['name'])).toEqual(names)
    expect(rows.map((row) => row['aim'])).toEqual([
      0.25, 0.25, 2, 11, 3, 20, 300, 1, 1, 1, 1, 1.5, 1.5, 1.5, 1, 1,
    ])
    for (const row of rows) {
      expect(Object.keys(row)).toEqual(['name', 'value', 'unit', 'against', 'ratio', 'aim', 'holds'])
      expect(row['value']).toBeGreaterThan(0)
      expect(row['unit']).toBe(units.get(String(row['name'])) ?? 'ms')
      expect(row['ratio']).toBeGreaterThan(0)
      expect(typeof row['holds']).toBe('boolean')
    }
  })

  it('refuse a name or an option they don’t know, naming what is accepted', async () => {
    const { status, stdout, stderr } = await run(['card-pdf', 'fence-paint', '--loud'])
    expect(status).toBe(2)
    expect(stdout).toBe('')
    expect(stderr.trim().split('\n')).toEqual([
      'fence-paint: not a benchmark, accepted is one of design-keystroke, design-heaviest, card-pdf, card-batch, price-rise, buy-job, buy-week, buy-quarter, buy-memory, buy-stop, search-100k, start-100k, open-100k, board-100k, window-stall, screen-size',
      '--loud: not an option, accepted is one of --json, --quick, --long, --seeds',
    ])
  })

  it('count by name how many plans are proven, a span of them, and end with a line that says so', async () => {
    const { status, stdout } = await run(['--long', 'job-rack', '--seeds', '3-5'], { BENCHMARK_FOLDER: '' })
    expect(status).toBe(0)
    const [closing = '', machine = ''] = stdout.trim().split('\n')
    expect(closing).toMatch(
      /^job-rack, 3 to 5 of 10000: 3 of 3 proven within 10 s of its own time \(asked: all\); 0 faults; median [\d.]+ ms, /,
    )
    expect(machine).toMatch(/^machine: /)
  })

  it('say that published instances are elsewhere, and refuse a count or a span that they can’t have', async () => {
    expect((await run(['--long', 'monaci'], { BENCHMARK_FOLDER: '' })).stdout).toMatch(
      /^monaci: not looked at; BENCHMARK_FOLDER names the folder that holds Crainic1\n/,
    )
    expect((await run(['monaci', '--seeds', '9-3'])).stderr.trim().split('\n')).toEqual([
      'monaci: a long count, accepted with --long',
      '--seeds: got 9-3, accepted is the first and last of a count, as 1-500',
    ])
  })

  it('say in one line that there is no Chromium to measure beside', async () => {
    const { status, stdout, stderr } = await run(['--json'], { BRACEWORK_CHROMIUM: '/nowhere/chromium' })
    expect(status).toBe(1)
    expect(stdout).toBe('')
    expect(stderr).toMatch(/^bench: .*BRACEWORK_CHROMIUM.*\n$/)
  })
})

describe('the gates that keys are typed into', () => {
  it('are the same for the same seed and others for another', () => {
    const examples = exampleSpecs()
    const gates = variedSpecs(examples, 12, 71)
    expect(variedSpecs(examples, 12, 71)).toEqual(gates)
    expect(variedSpecs(examples, 12, 72)).not.toEqual(gates)
    expect(new Set(gates.map((gate) => JSON.stringify(gate))).size).toBe(12)
  })

  it('are all made and drawn, and every key changes one’s size', () => {
    const gates = variedSpecs(exampleSpecs(), 6, 73)
    for (const gate of gates) expect(keystroke(gate)).toBeGreaterThan(100)
    const sizes = typedSpecs(gates, 18).map(({ spec }) => JSON.stringify(spec.size))
    expect(new Set(sizes).size).toBe(18)
  })

  it('give nothing to paint where the sizes typed make no gate', () => {
    const spec = { ...standardGate(), size: { from: 'leaf' as const, width: 9, height: 1830 } }
    expect(keystroke({ spec, unit: 'mm' })).toBe(0)
  })
})

describe('the card as a page for a browser', () => {
  it('carries every page, word and drawing of the card', async () => {
    const fonts = await loadFonts()
    const card = jobCard(cardInput(standardGate()), measureWith(fonts))
    const html = cardPage(card, fonts)
    const marks = card.pages.flatMap((page) => page.marks)
    const count = (kind: string) => marks.filter((mark) => mark.kind === kind).length
    expect(html.match(/<section>/g)).toHaveLength(card.pages.length)
    expect(html.match(/<p /g)).toHaveLength(count('text'))
    expect(html.match(/<line /g)).toHaveLength(count('line'))
    expect(html.match(/<svg /g)).toHaveLength(count('drawing') + card.pages.length)
    expect(html).toContain('1 : 12.5')
  })
})

describe('a share of measurements', () => {
  it('is the nearest rank', () => {
    expect(median([5, 1, 9])).toBe(5)
    expect(quantile([4, 3, 2, 1], 0.5)).toBe(2)
    expect(quantile([10, 20, 30], 0.99)).toBe(30)
    expect(quantile([30, 10, 20], 0)).toBe(10)
    expect(() => quantile([], 0.5)).toThrow(RangeError)
  })
})
