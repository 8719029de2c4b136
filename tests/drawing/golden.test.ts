import { createHash } from 'node:crypto'
import { describe, expect, it } from 'vitest'
import { extraDrawings } from '../../shared/drawing/extraDrawings.ts'
import { gateDrawings } from '../../shared/drawing/gateDrawings.ts'
import { designOf } from '../fixtures/gates.ts'
import { plainSvg } from './plainSvg.ts'
import { wholeGates } from './wholeGates.ts'

/**
 * Drawings as they were when somebody last looked at them: each gate's back as SVG text to read a change in, all other views by a short sum.
 * After a change that was meant, look at the drawings again, then run vitest with -u.
 */
describe('the drawings of forty gates', () => {
  it('are of forty gates, no two under one name', () => {
    expect(new Set(wholeGates.map(({ name }) => name)).size).toBe(40)
  })

  it.each(wholeGates)('are as they were looked at: $name, back', async ({ name, spec }) => {
    const { back } = gateDrawings(spec, designOf(spec), 'mm')
    await expect(plainSvg(back)).toMatchFileSnapshot(`golden/${name}.svg`)
  })

  it('are as they were looked at in every other view', async () => {
    const lines = wholeGates.flatMap(({ name, spec }) => {
      const design = designOf(spec)
      const { back: _back, ...others } = {
        ...gateDrawings(spec, design, 'mm'),
        ...extraDrawings(spec, design, 'mm'),
      }
      return Object.entries(others).map(
        ([view, drawing]) =>
          `${name} ${view} ${createHash('sha256').update(plainSvg(drawing)).digest('hex').slice(0, 16)}`,
      )
    })
    await expect(`${lines.join('\n')}\n`).toMatchFileSnapshot('golden/views.txt')
  })
})
