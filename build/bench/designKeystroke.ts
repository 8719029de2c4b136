import { build } from 'vite'
import type { GateSpec } from '../../shared/gate/spec.ts'
import { inProject } from '../paths.ts'
import { inChromium } from './browser.ts'
import { exampleSpecs } from './exampleSpecs.ts'
import { timeKeystrokes } from './keystroke.ts'
import { median, quantile, written, type Effort, type Measured } from './row.ts'

/** One frame of a screen at 60 a second, ms. */
const frameMs = 1000 / 60

/** The timing code as one script that a page can run. */
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

type InPage = { times: number[]; frame: number }

async function inBrowser(specs: GateSpec[], count: number): Promise<InPage> {
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
        frames.sort((a, b) => a - b)
        return { times: timed(given, times), frame: frames[30] ?? 0 }
      },
      [specs, count] as const,
    )
  })
}

/** A whole gate worked out, drawn and laid out at every key, in the browser and in Node, as a share of a frame. */
export async function designKeystroke({ quick }: Effort): Promise<Measured> {
  const specs = exampleSpecs()
  const count = quick ? 60 : 3000
  const node = timeKeystrokes(specs, count)
  const page = await inBrowser(specs, count)
  const worst = quantile(page.times, 0.99)
  const share = (ms: number) => `${written(ms)} ms, ${written((100 * ms) / frameMs)} % of a frame`
  return {
    row: {
      name: 'design-keystroke',
      value: worst,
      unit: 'ms at p99 in the browser',
      against: `a frame of ${written(frameMs)} ms (this Chromium drew one every ${written(page.frame)} ms)`,
      ratio: worst / frameMs,
      aim: 0.25,
      holds: worst / frameMs < 0.25,
    },
    said: [
      `browser, ${count} keystrokes over ${specs.length} specs: median ${share(median(page.times))}; p99 ${share(worst)}`,
      `Node: median ${share(median(node))}; p99 ${share(quantile(node, 0.99))}`,
    ],
  }
}
