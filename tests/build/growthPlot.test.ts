import { describe, expect, it } from 'vitest'
import { growthPlot } from '../../build/bench/growthPlot.ts'

const picture = growthPlot(
  [
    {
      ...{ name: 'ours', colour: '#123456' },
      points: [
        { count: 4, ms: 1, ended: true },
        { count: 4, ms: 100, ended: true },
        { count: 4, ms: 10, ended: true },
        { count: 40, ms: 10_000, ended: true },
      ],
    },
    { ...{ name: 'theirs', colour: '#654321' }, points: [{ count: 4, ms: 20_000, ended: false }] },
  ],
  { limitMs: 20_000, requests: 3 },
)
const dots = [...picture.matchAll(/<circle cx="([\d.]+)" cy="([\d.]+)".*? fill="(#\w+)"/g)].map(
  ([, x, y, fill]) => ({ x: Number(x), y: Number(y), fill }),
)

describe('the picture of how the time to a plan grows', () => {
  it('has as far from 1 to 10 ms as from 10 to 100, and a line through the middle one', () => {
    const [one, hundred, ten, later] = dots
    expect((one?.y ?? 0) - (ten?.y ?? 0)).toBeCloseTo((ten?.y ?? 0) - (hundred?.y ?? 0), 0)
    expect(picture).toContain(
      `<polyline points="${ten?.x.toFixed(1)},${ten?.y.toFixed(1)} ${later?.x.toFixed(1)},${later?.y.toFixed(1)}"`,
    )
  })

  it('fills what was proven, and leaves hollow what the limit ended', () => {
    expect(dots.map(({ fill }) => fill)).toEqual(['#123456', '#123456', '#123456', '#123456', '#fff'])
  })
})
