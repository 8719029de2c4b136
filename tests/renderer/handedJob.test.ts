import { afterEach, expect, it } from 'vitest'
import { watchHandedJobs } from '../../renderer/handedJob.ts'

const settled = () => new Promise((done) => setTimeout(done, 20))

/** The window's own carrier with one file waiting, as a press in a folder leaves it. */
function carrierWith(...waiting: { name: string; text: string }[]): { asked: number } {
  const seen = { asked: 0 }
  const handed = async () => {
    seen.asked += 1
    return { ok: true, value: waiting.shift() ?? null }
  }
  Reflect.set(window, 'bracework', { 'job.handed': handed })
  return seen
}

afterEach(() => void Reflect.deleteProperty(window, 'bracework'))

it('a job’s file that was pressed in a folder comes to the screen on opening, and on each return to the window', async () => {
  carrierWith({ name: 'one.gate-job', text: 'first' }, { name: 'two.gate-job', text: 'second' })
  const taken: string[] = []
  const stop = watchHandedJobs((file) => {
    void file.text().then((text) => taken.push(`${file.name}: ${text}`))
  })
  await settled()
  window.dispatchEvent(new Event('focus'))
  await settled()
  window.dispatchEvent(new Event('focus'))
  await settled()
  expect(taken).toEqual(['one.gate-job: first', 'two.gate-job: second'])
  stop()
})

it('nothing is asked once it is stopped, nor in a browser, which is handed nothing', async () => {
  const seen = carrierWith()
  watchHandedJobs(() => {})()
  await settled()
  window.dispatchEvent(new Event('focus'))
  await settled()
  expect(seen.asked).toBe(1)
  Reflect.deleteProperty(window, 'bracework')
  watchHandedJobs(() => expect.unreachable())()
})
