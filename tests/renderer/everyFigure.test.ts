import { enableAutoUnmount, flushPromises, mount, type VueWrapper } from '@vue/test-utils'
import { afterEach, describe, expect, it } from 'vitest'
import BigFigures from '../../renderer/gate/BigFigures.vue'
import CutTable from '../../renderer/gate/CutTable.vue'
import FittingsTable from '../../renderer/gate/FittingsTable.vue'
import HolesTable from '../../renderer/gate/HolesTable.vue'
import MovementTable from '../../renderer/gate/MovementTable.vue'
import OpeningSizes from '../../renderer/gate/OpeningSizes.vue'
import RipTable from '../../renderer/gate/RipTable.vue'
import SawsTable from '../../renderer/gate/SawsTable.vue'
import SettingOutTable from '../../renderer/gate/SettingOutTable.vue'
import WeightTable from '../../renderer/gate/WeightTable.vue'
import FigureHow from '../../renderer/components/FigureHow.vue'
import { useGateStore } from '../../renderer/stores/gate.ts'
import { useJobStore } from '../../renderer/stores/job.ts'
import type { Figure, Figures } from '../../shared/gate/figures.ts'
import { wholeSpecs } from './wholeSpecs.ts'
import { carrier, job } from './standIn.ts'

const screens = [
  BigFigures,
  CutTable,
  RipTable,
  HolesTable,
  SawsTable,
  SettingOutTable,
  FittingsTable,
  WeightTable,
  MovementTable,
]

async function shown(spec: (typeof wholeSpecs)[number]['spec']): Promise<VueWrapper[]> {
  carrier(job({ entry: { spec, typed: {} } }))
  await useJobStore().open(7)
  const opened = spec.size.from === 'opening' ? [OpeningSizes] : []
  return [...screens, ...opened].map((screen) => mount(screen, { attachTo: document.body }))
}

const figuresOf = (wrapper: VueWrapper): (Figure | undefined)[] =>
  wrapper.findAllComponents(FigureHow).map((how) => how.props('figure'))

/** Figures that a person meets only on the drawing or the printed card: each screw's place, and each board by itself through the year. */
const elsewhere = /(^|\.)fixing\.\d+\.[xy]$|^movement\.\w+\.board\.\d+$/

/** A blank no longer than its piece, and a cut that takes nothing off, aren't worth a word. */
const saysNothing = (figures: Figures, id: string): boolean =>
  id.endsWith('.cutAt')
    ? figures[id]?.value === 0
    : /^cut\.\d+\.blank$/.test(id) && figures[id]?.value === figures[id.replace('blank', 'length')]?.value

/** One or two gates of every kind. */
const gates = wholeSpecs.filter(({ name }) => /^(01|03|06|08|11|15|19|24|26|28|30|33|36|38|39)-/.test(name))

enableAutoUnmount(afterEach)

describe('every figure on the screen', () => {
  afterEach(() => useJobStore().close())

  it.each(gates)(
    '$name: answers how with formula, numbers and source, and none is left unsaid',
    async ({ spec }) => {
      const wrappers = await shown(spec)
      const told = wrappers.flatMap(figuresOf)
      expect(told.length).toBeGreaterThan(60)
      for (const figure of told) {
        expect(figure?.formula).toMatch(/\S/)
        expect(figure?.source).toMatch(/\S/)
        expect(Object.values(figure?.inputs ?? {}).length).toBeGreaterThan(0)
      }
      // A cell of figures with no working behind it would be a bare number.
      const bare = wrappers.flatMap((wrapper) =>
        wrapper
          .findAll('td.figures, dd')
          .filter((cell) => /\d/.test(cell.text()) && !cell.find('.how').exists()),
      )
      expect(bare.map((cell) => cell.html())).toEqual([])
      const figures = useGateStore().made?.figures ?? {}
      const unsaid = Object.entries(figures)
        .filter(([id, one]) => !elsewhere.test(id) && !saysNothing(figures, id) && !told.includes(one))
        .map(([id]) => id)
      expect(unsaid).toEqual([])
    },
  )

  it('opens to its working when it is pressed', async () => {
    const heaviest = wholeSpecs.find(({ name }) => name.startsWith('24'))
    if (!heaviest) throw new Error('the heaviest gate is among the examples')
    await shown(heaviest.spec)
    const how = [...document.querySelectorAll<HTMLElement>('.how')].find((one) =>
      /Pull on the top hinge/.test(one.textContent ?? ''),
    )
    how?.click()
    await flushPromises()
    const working = document.querySelector('.figure-working')
    const figure = useGateStore().made?.figures['hinges.pull']
    expect(working?.textContent).toContain(figure?.formula)
    expect(working?.textContent).toContain(figure?.source)
  })
})
