import { inPage } from './inPage.ts'
import { exampleSpecs } from './exampleSpecs.ts'
import { timeKeystrokes, type Keystrokes } from './keystroke.ts'
import { median, quantile, written, type Effort, type Measured } from './row.ts'
import { variedSpecs } from './variedSpecs.ts'

/** One frame of a screen at 60 a second, ms, and the share of it that a keystroke may take. */
export const [frameMs, aim] = [1000 / 60, 0.25]

/** Any number would do; kept, so that every run types the same gates. */
const seed = 20261125

export const share = (ms: number) => `${written(ms)} ms (${written((100 * ms) / frameMs)} % of a frame)`

export const told = (where: string, { times }: Keystrokes): string =>
  `${where}: median ${share(median(times))}, p99 ${share(quantile(times, 0.99))}, longest ${written(Math.max(...times))} ms`

/** A whole gate worked out, drawn and laid out at every key, in the browser and in Node, as a share of a frame. */
export async function designKeystroke({ quick }: Effort): Promise<Measured> {
  const [many, count] = quick ? [20, 60] : [200, 3000]
  const gates = variedSpecs(exampleSpecs(), many, seed)
  const node = timeKeystrokes(gates, count)
  const page = await inPage({ gates, count, work: 'screen' })
  const p99 = quantile(page.times, 0.99)
  const ratio = p99 / frameMs
  return {
    row: {
      name: 'design-keystroke',
      value: p99,
      unit: 'ms',
      against: 'one 16.7 ms frame, same Chromium',
      ratio,
      aim,
      holds: ratio < aim,
    },
    said: [
      `p99 of ${page.times.length} keystrokes over ${many} gates (seed ${seed}); ${page.stopped} more made no gate and aren’t counted`,
      `${told('browser', page)}; the first of a fresh page, not counted, ${written(page.first)} ms`,
      told('Node', node),
      `this Chromium drew a frame every ${written(median(page.frames))} ms (median of ${page.frames.length}); its clock steps by 0.1 ms`,
      'from the spec to three views laid out for the screen: making SVG of them, putting it on the page and painting it are not in it',
    ],
  }
}
