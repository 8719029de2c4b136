import { mount } from '@vue/test-utils'
import { describe, expect, it } from 'vitest'
import YearChart from '../../renderer/gate/YearChart.vue'
import { hangingGroups, movementRows, writeResult } from '../../renderer/resultRows.ts'
import { yearLine } from '../../renderer/yearLine.ts'
import { design } from '../../shared/gate/design.ts'
import { hang } from '../../shared/gate/reshape.ts'
import { parseSpec } from '../../shared/gate/parseSpec.ts'
import { standardDraft } from '../../shared/gate/standardSpec.ts'
import { applyChanges } from '../../shared/job/applyChange.ts'
import { standardClimate } from '../../shared/timber/standardClimate.ts'
import { job } from './standIn.ts'

function made(hanging: 'one' | 'stable') {
  const spec = {
    ...standardDraft(),
    size: { from: 'leaf' as const, width: 985, height: 1830 },
    climate: standardClimate,
    site: { slopeAcross: 0.02, gustMs: 26 },
  }
  const applied = applyChanges(job({ entry: { spec, typed: {} } }), hang(spec, hanging))
  const read = applied.ok ? parseSpec(applied.value.job.entry.spec) : applied
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join())
  const outcome = design(read.value)
  if (!outcome.made) throw new Error('this gate can be made')
  return outcome.design
}

describe('what was worked out', () => {
  it('tells weight, hinges, braces and swing, each with a worked figure behind it', () => {
    const gate = made('one')
    const groups = hangingGroups(gate)
    expect(groups.map(({ title }) => title)).toEqual(['Weight', 'Hinges', 'Braces', 'Swing'])
    const rows = groups.flatMap((group) => group.rows)
    for (const { id } of rows) expect(gate.figures[id]?.source).toMatch(/\S/)
    expect(rows.find(({ id }) => id === 'leaf.centreX')?.shown).toBe('492.5 mm')
    expect(rows.map(({ id }) => id)).toEqual(
      expect.arrayContaining(['leaf.mass', 'hinges.pull', 'leaf.wind', 'swing.gap', 'swing.ground']),
    )
  })

  it('tells them for each half of a stable door by its own figures', () => {
    const groups = hangingGroups(made('stable'))
    expect(groups.map(({ title }) => title)).toContain('Upper half: swing')
    const ids = groups.flatMap(({ rows }) => rows.map(({ id }) => id))
    expect(ids).toContain('upper.leaf.mass')
    expect(new Set(ids).size).toBe(ids.length)
  })

  it('tells movement in the shop, at the driest and at the wettest', () => {
    const rows = movementRows(made('one'))
    const gap = rows.find(({ name }) => name === 'Gap at a joint')
    expect(gap?.airs.map(({ id }) => id.split('.')[1])).toEqual(['shop', 'driest', 'wettest'])
    expect(gap?.airs[0]?.shown).toBe('2.0 mm')
  })

  it('writes forces whole, and nothing as 0.0 with no sign', () => {
    expect(writeResult({ value: 122.58, unit: 'N' })).toBe('123 N')
    expect(writeResult({ value: -0.01, unit: 'mm' })).toBe('0.0 mm')
    expect(writeResult({ value: -0.89, unit: 'mm' })).toBe('−0.9 mm')
  })
})

describe('the line of a year', () => {
  const values = [4, 3, 2, 1, 0, -1, -2, -1, 1, 3, 5, 6]

  it('fills its strip between the highest and the lowest month', () => {
    const line = yearLine(values, { width: 240, height: 100, room: 20 })
    expect(line?.highest).toEqual({ month: 11, value: 6 })
    expect(line?.lowest).toEqual({ month: 6, value: -2 })
    expect(line?.points[11]).toEqual({ x: 230, y: 20 })
    expect(line?.points[6]).toEqual({ x: 130, y: 80 })
    // 2 is half of the way from −2 to 6.
    expect(line?.points[2]?.y).toBe(50)
  })

  it('lies level in the middle where nothing changes, and isn’t there without a value', () => {
    const strip = { width: 240, height: 100, room: 20 }
    expect(yearLine([7, 7, 7], strip)?.points.map(({ y }) => y)).toEqual([50, 50, 50])
    expect(yearLine([], strip)).toBeUndefined()
  })

  it('says its extremes to an ear as well as to an eye', () => {
    const chart = mount(YearChart, { props: { title: 'Gap at a joint', values } })
    expect(chart.get('svg').attributes('aria-label')).toBe(
      'Gap at a joint: most in December, 6.0 mm; least in July, −2.0 mm.',
    )
    expect(chart.findAll('circle')).toHaveLength(2)
    expect(chart.text()).toContain('6.0\u00a0mm')
  })
})
