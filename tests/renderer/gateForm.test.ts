import { enableAutoUnmount, flushPromises, mount } from '@vue/test-utils'
import { afterEach, describe, expect, it } from 'vitest'
import GateForm from '../../renderer/gate/GateForm.vue'
import { useGateStore } from '../../renderer/stores/gate.ts'
import { useJobStore } from '../../renderer/stores/job.ts'
import { standardDraft } from '../../shared/gate/standardSpec.ts'
import type { DraftSpec } from '../../shared/gate/spec.ts'
import { carrier, job } from './standIn.ts'

const sized: DraftSpec['size'] = { from: 'leaf', width: 985, height: 1830 }

const measured: DraftSpec['size'] = {
  from: 'opening',
  widths: [1001, 1002, 1003],
  heights: [1880, 1881],
  hangingGap: 6,
  closingGap: 10,
  groundGap: 50,
}

async function form(some: Partial<DraftSpec> = {}) {
  carrier(job({ entry: { spec: { ...standardDraft(), size: sized, ...some }, typed: {} } }))
  await useJobStore().open(7)
  return mount(GateForm, { attachTo: document.body })
}
type Form = Awaited<ReturnType<typeof form>>

const spec = (): DraftSpec => {
  const now = useJobStore().job?.entry.spec
  if (!now) throw new Error('the job is open')
  return now
}

/** Presses a word of a choice, as a hand does; the last choice of that name, since ledges and brace both have ends. */
async function choose(wrapper: Form, label: string, word: string) {
  const group = wrapper.findAll('[role="radiogroup"]').findLast((one) => one.find('.label').text() === label)
  const option = group?.findAll('label').find((one) => one.text() === word)
  if (!option) throw new Error(`no ${word} under ${label}`)
  await option.get('input').setValue(true)
}

async function press(wrapper: Form, word: string) {
  const button = wrapper.findAll('button').find((one) => one.text().startsWith(word))
  if (!button) throw new Error(`no button ${word}`)
  await button.trigger('click')
  await flushPromises()
}

const type = (wrapper: Form, field: string, words: string) =>
  wrapper.get<HTMLInputElement>(`[data-field="${field}"]`).setValue(words)

enableAutoUnmount(afterEach)

describe('the form of a gate', () => {
  afterEach(() => useJobStore().close())

  it('asks for an opening’s three widths and two heights and shows what comes of them', async () => {
    const wrapper = await form()
    await choose(wrapper, 'Sizes of', 'the opening')
    expect(wrapper.find('[data-field="size.width"]').exists()).toBe(false)
    const sizes = {
      'widths.0': '1004',
      'widths.1': '1001',
      'widths.2': '1009',
      'heights.0': '1880',
      'heights.1': '1884',
    }
    for (const [field, words] of Object.entries(sizes)) await type(wrapper, `size.${field}`, words)
    expect(spec().size).toMatchObject({ widths: [1004, 1001, 1009], heights: [1880, 1884] })
    expect(useGateStore().standing).toBe('made')
    // 1009 − 1001, and 10 + 8.
    expect(wrapper.text()).toMatch(/Widths differ by.*8\smm/)
    expect(wrapper.text()).toMatch(/Widest gap.*18\smm/)
  })

  it('keeps a diagonal to itself until the other is there', async () => {
    const wrapper = await form({ size: measured })
    await type(wrapper, 'survey.plumb.0', '3')
    await type(wrapper, 'survey.plumb.0', '')
    await type(wrapper, 'survey.diagonals.0', '2130')
    expect(spec().survey).toBeUndefined()
    expect(wrapper.text()).toContain('The other diagonal is wanted too.')
    // Waiting for its fellow it stops nothing.
    expect(useGateStore().stops).toEqual([])
    await type(wrapper, 'survey.diagonals.1', '2137')
    expect(spec().survey?.diagonals).toEqual([2130, 2137])
    await type(wrapper, 'survey.diagonals.0', '7\' 0"')
    expect(spec().survey?.diagonals).toEqual([2133.6, 2137])
    expect(useJobStore().job?.entry.typed).toMatchObject({
      'survey.diagonals.0': '7\' 0"',
      'survey.diagonals.1': '2137',
    })
    await type(wrapper, 'survey.diagonals.1', '')
    expect(spec().survey).toBeUndefined()
    await type(wrapper, 'survey.diagonals.1', '84 1/8"')
    expect(spec().survey?.diagonals).toEqual([2133.6, 2136.775])
    expect(wrapper.get<HTMLInputElement>('[data-field="survey.diagonals.0"]').element.value).toBe('7\' 0"')
    await type(wrapper, 'survey.plumb.1', '-4')
    expect(spec().survey?.plumb).toEqual([0, -4])
  })

  it('has a diagonal that waits for the other still there when the job is opened again', async () => {
    const wrapper = await form({ size: measured })
    await type(wrapper, 'survey.diagonals.1', '84 1/8"')
    wrapper.unmount()
    await useJobStore().close()
    await useJobStore().open(7)
    expect(useJobStore().job?.entry.typed).toEqual({ 'survey.diagonals.1': '84 1/8"' })
    const again = mount(GateForm, { attachTo: document.body })
    const second = again.get<HTMLInputElement>('[data-field="survey.diagonals.1"]')
    expect(second.element.value).toBe('84 1/8"')
    expect(again.text()).toContain('The other diagonal is wanted too.')
    await type(again, 'survey.diagonals.0', '2130')
    expect(spec().survey?.diagonals).toEqual([2130, 2136.775])
    await type(again, 'survey.diagonals.0', '')
    expect(useJobStore().job?.entry.typed).toEqual({ 'survey.diagonals.1': '84 1/8"' })
    await choose(again, 'Sizes of', 'the leaf')
    expect(useJobStore().job?.entry.typed).toEqual({})
  })

  it('frames the gate in one go: frame, square ledges and no insets, and the frame’s own entries', async () => {
    const wrapper = await form()
    await choose(wrapper, 'Kind', 'framed, ledged and braced')
    expect(spec()).toMatchObject({
      construction: 'framed-ledged-braced',
      ledges: { hangingInset: 0, end: { cut: 'square' } },
    })
    expect(useJobStore().pending.at(-1)?.length).toBeGreaterThan(3)
    expect(useGateStore().standing).toBe('made')
    await type(wrapper, 'frame.tenon', '55')
    expect(spec().frame?.tenon).toBe(55)
    expect(wrapper.find('[data-field="ledges.hangingInset"]').exists()).toBe(false)
  })

  it('makes a pair that laps, and a stable door', async () => {
    const wrapper = await form()
    await choose(wrapper, 'Leaves', 'a pair')
    await choose(wrapper, 'Meeting edge', 'rebated')
    await type(wrapper, 'meeting.lap', '13')
    await type(wrapper, 'size.meetingGap', '7')
    expect(spec()).toMatchObject({
      leaves: 2,
      meeting: { edge: 'rebated', lap: 13 },
      size: { meetingGap: 7 },
    })
    await choose(wrapper, 'Leaves', 'stable door')
    await type(wrapper, 'stable.lowerHeight', '1015')
    expect(spec()).toMatchObject({ leaves: 1, stable: { lowerHeight: 1015 } })
    expect(useGateStore().made?.leaves.map(({ name }) => name)).toEqual(['lower half', 'upper half'])
  })

  it('rakes the top to the side that is chosen', async () => {
    const wrapper = await form()
    await choose(wrapper, 'Top', 'raked')
    await choose(wrapper, 'High side', 'closing')
    await type(wrapper, 'top.rise', '135')
    expect(spec().top).toEqual({ shape: 'raked', rise: 135, high: 'closing' })
  })

  it('notches the brace and leaves the joint gap to the climate', async () => {
    const wrapper = await form()
    await choose(wrapper, 'Ends', 'notched')
    expect(spec().braces).toMatchObject({ ends: 'notched', notchDepth: 12 })
    await choose(wrapper, 'Gap is', 'from the climate')
    expect(spec().boards.gap).toBe('auto')
    expect(useGateStore().made?.movement?.gap).toBeGreaterThan(0)
  })

  it('takes slopes in mm a metre, also falling ones, and empties them again', async () => {
    const wrapper = await form()
    await type(wrapper, 'site.slopeAcross', '-25')
    expect(spec().site?.slopeAcross).toBe(-0.025)
    await type(wrapper, 'site.slopeAcross', '')
    expect(spec().site?.slopeAcross).toBeUndefined()
    expect(wrapper.get('[data-field="site.slopeAcross"]').attributes('aria-invalid')).toBeUndefined()
  })

  it('finds the wettest month by itself when a month is changed', async () => {
    const wrapper = await form()
    await press(wrapper, 'Take a typical year')
    expect(wrapper.text()).toContain('Invented')
    await type(wrapper, 'climate.months.6.rhPercent', '97')
    expect(spec().climate?.wettest).toEqual({ tempC: 17, rhPercent: 97 })
    await press(wrapper, 'Leave the weather out')
    expect(spec().climate).toBeUndefined()
  })

  it('takes the workshop’s own values of a timber on this job, and lets go of them again', async () => {
    const wrapper = await form()
    const density = () => wrapper.get<HTMLInputElement>('[data-field="timbers.European redwood.density"]')
    const weight = () => useGateStore().made?.leaves[0]?.massKg ?? 0
    expect(density().element.placeholder).toBe('510')
    expect(wrapper.get('[aria-label="European redwood"]').text()).toContain('from memory')
    const before = weight()
    await density().setValue('459')
    expect(spec().timbers).toEqual({ 'European redwood': { density: 459 } })
    // 459 is nine tenths of 510, and there is no ironmongery yet.
    expect(weight() / before).toBeCloseTo(0.9, 9)
    await type(wrapper, 'timbers.European redwood.tangential', '0.31')
    expect(spec().timbers?.['European redwood']?.tangential).toBeCloseTo(0.0031, 12)
    expect(wrapper.text()).toContain('this workshop’s own; listed 510')
    await density().setValue('')
    expect(Object.keys(spec().timbers?.['European redwood'] ?? {})).toEqual(['tangential'])
    await press(wrapper, 'Take all as listed')
    expect(spec().timbers).toBeUndefined()
  })

  it('takes a timber of the workshop’s own, which a section can then be of', async () => {
    const wrapper = await form()
    const group = wrapper.get('section[aria-label="Timber"]')
    await group.get('[data-field="timbers"]').setValue('yard elm')
    const density = group.findAll('input[inputmode="decimal"]').at(-1)
    await density?.setValue('560')
    await press(wrapper, 'Add this timber')
    expect(spec().timbers).toEqual({ 'yard elm': { density: 560 } })
    useJobStore().edit([{ path: 'spec.boards.section.species', value: 'yard elm' }])
    await flushPromises()
    expect(useGateStore().standing).toBe('made')
    expect(wrapper.find('section[aria-label="Timber"] summary').text()).toContain('yard elm')
    await type(wrapper, 'timbers.yard elm.density', '')
    expect(spec().timbers).toEqual({ 'yard elm': { density: 560 } })
    expect(group.get('[role="alert"]').text()).toMatch(/yard elm/)
  })

  it('proposes ironmongery that the joiner can change and take out', async () => {
    const wrapper = await form()
    await press(wrapper, 'Propose hinges and lock')
    expect(spec().ironmongery.map(({ kind }) => kind)).toEqual(expect.arrayContaining(['hinge', 'latch']))
    expect(useGateStore().made?.fittings.length).toBeGreaterThan(2)
    const count = spec().ironmongery.length
    await type(wrapper, 'ironmongery.0.heights', '205, 1611')
    expect(spec().ironmongery[0]?.heights).toEqual([205, 1611])
    await type(wrapper, 'ironmongery.0.quantity', '3')
    expect(spec().ironmongery[0]).toMatchObject({ quantity: 3 })
    expect(spec().ironmongery[0]?.heights).toBeUndefined()
    await press(wrapper, 'Take out')
    expect(spec().ironmongery).toHaveLength(count - 1)
    await press(wrapper, 'Add this piece')
    expect(spec().ironmongery).toHaveLength(count)
    expect(spec().ironmongery.at(-1)).toMatchObject({ kind: 'hinge', quantity: 2, side: 'hanging' })
  })
})
