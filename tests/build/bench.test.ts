import { spawnSync } from 'node:child_process'
import { describe, expect, it } from 'vitest'
import { median, quantile } from '../../build/bench/row.ts'
import { inProject } from '../../build/paths.ts'

const bench = (...args: string[]) =>
  spawnSync(process.execPath, [inProject('build/bench/bench.ts'), ...args], { encoding: 'utf8' })

describe('the benchmarks', () => {
  it('print one row each and nothing else for a program', { timeout: 120_000 }, () => {
    const { status, stdout } = bench('--json', '--quick')
    expect(status).toBe(0)
    const rows = JSON.parse(stdout) as Record<string, unknown>[]
    expect(rows.map((row) => row['name'])).toEqual(['design-keystroke', 'card-pdf'])
    for (const row of rows) {
      expect(Object.keys(row)).toEqual(['name', 'value', 'unit', 'against', 'ratio', 'aim', 'holds'])
      expect(row['value']).toBeGreaterThan(0)
      expect(row['ratio']).toBeGreaterThan(0)
      expect(typeof row['holds']).toBe('boolean')
    }
  })

  it('refuse a name whose work is still to come, and one they don’t know, with nothing printed', () => {
    const { status, stdout, stderr } = bench('--json', 'buy-week', 'fence-paint')
    expect(status).toBe(2)
    expect(stdout).toBe('')
    expect(stderr.trim().split('\n')).toEqual([
      expect.stringMatching(/^buy-week: not yet/),
      expect.stringMatching(/^fence-paint: not a benchmark/),
    ])
  })
})

describe('a share of measurements', () => {
  it('is the nearest rank', () => {
    expect(median([5, 1, 9])).toBe(5)
    expect(quantile([4, 3, 2, 1], 0.5)).toBe(2)
    expect(quantile([10, 20, 30], 0.99)).toBe(30)
    expect(() => quantile([], 0.5)).toThrow(RangeError)
  })
})
