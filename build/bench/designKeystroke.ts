import { build } from 'vite'
import { inProject } from '../paths.ts'
import { inChromium } from './browser.ts'
import { exampleSpecs } from './exampleSpecs.ts'
import { timeKeystrokes, type Keystrokes } from './keystroke.ts'
import { median, quantile, written, type Effort, type Measured } from './row.ts'
import { variedSpecs, type VariedSpec } from './variedSpecs.ts'

/** One frame of a screen at 60 a second, ms, and the share of it that a keystroke may take. */
const [frameMs, aim] = [1000 / 60, 0.25]

/** Any number would do; kept, so that every run types the same gates. */
const seed = 20261125

/** The timing code as one script that a page can run. Nothing is written to disk. */
async function bundled(): Promise<string> {
  const made = await build({
    configFile: false,
    logLevel: 'silent',
    build: {
      write: false,
      lib: {
        entry: inProject('build/bench/keystroke.ts'),
        formats: ['iife'],
        name: 'bench',
        fileName: 'bench',
      },
    },
  })
  const [first] = Array.isArray(made) ? made : [made]
  if (!first || !('output' in first)) throw new Error('the bench could not be bundled')
  return first.output[0].code
}

type InPage = Keystrokes & { frames: number[] }

async function inBrowser(gates: VariedSpec[], count: number): Promise<InPage> {
  const code = await bundled()
  return inChromium(async (browser) => {
    const page = await browser.newPage()
    await page.addScriptTag({ content: code })
    return page.evaluate(
      async ([given, times]) => {
        const { timeKeystrokes: timed } = (
          globalThis as typeof globalThis & { bench: { timeKeystrokes: typeof timeKeystrokes } }
        ).bench
        const frames: number[] = []
        const next = () => new Promise<number>((resolve) => requestAnimationFrame(resolve))
        let last = await next()
        for (let i = 0; i < 60; i += 1) {
          const now = await next()
          frames.push(now - last)
          last = now
        }
        return { ...timed(given, times), frames }
      },
      [gates, count] as const,
    )
  })
}

const share = (ms: number) => `${written(ms)} ms (${written((100 * ms) / frameMs)} % of a frame)`

const told = (where: string, { times }: Keystrokes): string =>
  `${where}: median ${share(median(times))}, p99 ${share(quantile(times, 0.99))}, longest ${written(Math.max(...times))} ms`

/** A whole gate worked out, drawn and laid out at every key, in the browser and in Node, as a share of a frame. */
export async function designKeystroke({ quick }: Effort): Promise<Measured> {
  const [many, count] = quick ? [20, 60] : [200, 3000]
  const gates = variedSpecs(exampleSpecs(), many, seed)
  const node = timeKeystrokes(gates, count)
  const page = await inBrowser(gates, count)
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
