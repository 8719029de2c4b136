import { mount } from '@vue/test-utils'
import { describe, expect, it } from 'vitest'
import LengthField from '../../renderer/components/LengthField.vue'

type Read = { value: number | null; typed: string }

const field = (some: Record<string, unknown> = {}) =>
  mount(LengthField, {
    props: { label: 'Width', value: null, unit: 'mm', field: 'size.width', ...some },
    attachTo: document.body,
  })

const lastRead = (wrapper: ReturnType<typeof field>): Read | undefined =>
  wrapper.emitted<[Read]>('change')?.at(-1)?.[0]

describe('a length field', () => {
  it('echoes what it understood in both units and tells the length and the words', async () => {
    const wrapper = field()
    await wrapper.get('input').setValue('36 5/8"')
    expect(lastRead(wrapper)).toEqual({ value: 930.275, typed: '36 5/8"' })
    expect(wrapper.text()).toContain('930.275\u00a0mm')
    expect(wrapper.text()).toContain('36\u00a0⅝″')
  })

  it('asks about 1,830 with a button for each meaning, and takes the one that is pressed', async () => {
    const wrapper = field()
    await wrapper.get('input').setValue('1,830')
    expect(lastRead(wrapper)).toEqual({ value: null, typed: '1,830' })
    const buttons = wrapper.findAll('button')
    expect(buttons.map((button) => button.text().split(' · ')[0])).toEqual(['1830\u00a0mm', '1.83\u00a0mm'])
    await buttons[0]?.trigger('click')
    expect(lastRead(wrapper)).toEqual({ value: 1830, typed: '1830' })
  })

  it('says beside itself, in a sentence, what it can’t read, and still tells the words', async () => {
    const wrapper = field()
    await wrapper.get('input').setValue('5 cubits')
    expect(wrapper.get('[role="alert"]').text()).toMatch(/\.$/)
    expect(wrapper.get('input').attributes('aria-invalid')).toBe('true')
    expect(lastRead(wrapper)).toEqual({ value: null, typed: '5 cubits' })
  })

  it('shows the words it was given before the length', () => {
    expect(field({ value: 1803.4, typed: '5\' 11"' }).get('input').element.value).toBe('5\' 11"')
    expect(field({ value: 1803.4 }).get('input').element.value).toBe('1803.4')
    expect(field({ value: 930.275, unit: 'in' }).get('input').element.value).toBe('36 5/8"')
  })

  it('steps by 1 mm, by 10 with Shift, by a 16th of an inch in a job in inches', async () => {
    const metric = field({ value: 985, typed: '985' })
    await metric.get('input').trigger('keydown', { key: 'ArrowUp' })
    expect(lastRead(metric)).toEqual({ value: 986, typed: '986' })
    await metric.get('input').trigger('keydown', { key: 'ArrowDown', shiftKey: true })
    expect(lastRead(metric)).toEqual({ value: 980, typed: '980' })
    const imperial = field({ value: 930.275, typed: '36 5/8"', unit: 'in' })
    await imperial.get('input').trigger('keydown', { key: 'ArrowUp' })
    expect(lastRead(imperial)).toEqual({ value: 931.8625, typed: '36 11/16"' })
  })

  it('refuses a length over what it takes', async () => {
    const wrapper = field({ limits: { max: 500 } })
    await wrapper.get('input').setValue('612')
    expect(lastRead(wrapper)).toEqual({ value: null, typed: '612' })
    expect(wrapper.get('[role="alert"]').text()).toContain('500')
  })

  it('leaves the words under a hand alone, and takes another window’s when no hand is in it', async () => {
    const wrapper = field({ value: 985, typed: '985' })
    await wrapper.get('input').trigger('focus')
    await wrapper.get('input').setValue('')
    await wrapper.setProps({ value: 985, typed: undefined })
    expect(wrapper.get('input').element.value).toBe('')
    await wrapper.get('input').trigger('blur')
    await wrapper.setProps({ value: 1015, typed: '1015' })
    expect(wrapper.get('input').element.value).toBe('1015')
  })
})
