import { mount } from '@vue/test-utils'
import { afterEach, describe, expect, it, vi } from 'vitest'
import { defineComponent, h, onErrorCaptured, type Component, type FunctionalComponent } from 'vue'
import { lateScreen, NotFetched } from '../../renderer/lateScreen.ts'

const Screen: FunctionalComponent = () => h('p', 'The screen')

/** A place in which a late screen stands, as the program's own frame does. */
const place = (Late: Component) =>
  mount(
    defineComponent({
      setup() {
        onErrorCaptured((error) => !(error instanceof NotFetched))
        return () => h('main', [h(Late)])
      },
    }),
  )

describe('a screen fetched late', () => {
  afterEach(() => vi.useRealTimers())

  it('says that it is on its way, then shows', async () => {
    vi.useFakeTimers()
    const arrived: { now?: () => void } = {}
    const Late = lateScreen(() => new Promise((done) => (arrived.now = () => done({ default: Screen }))))
    const held = place(Late)
    expect(held.text()).toBe('')
    await vi.advanceTimersByTimeAsync(100)
    expect(held.text()).toBe('One moment…')
    arrived.now?.()
    await vi.advanceTimersByTimeAsync(1)
    expect(held.text()).toBe('The screen')
  })

  it('is fetched once more by itself, and where that fails too, says so with the way out', async () => {
    vi.useFakeTimers()
    let tries = 0
    const Late = lateScreen(() => {
      tries += 1
      return Promise.reject(new Error('no such file'))
    })
    const held = place(Late)
    await vi.advanceTimersByTimeAsync(500)
    expect(tries).toBe(2)
    expect(held.find('[role="alert"]').text()).toContain('This screen didn’t open')
    expect(held.find('button').text()).toBe('Open it again')
  })
})
