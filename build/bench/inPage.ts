import { build } from 'vite'
import { inProject } from '../paths.ts'
import { inChromium } from './browser.ts'
import type { Keystrokes, timeKeystrokes, Work } from './keystroke.ts'
import type { VariedSpec } from './variedSpecs.ts'

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

/** Keys typed on a page: their times, and how long the page's frames took. */
export type InPage = Keystrokes & { frames: number[] }

/** What is typed on the page: count keys over the gates, and how much of the work is timed. */
export type Typing = { gates: VariedSpec[]; count: number; work: Work }

/** Types on a page of a fresh Chromium and times every key there. */
export async function inPage({ gates, count, work }: Typing): Promise<InPage> {
  const code = await bundled()
  return inChromium(async (browser) => {
    const page = await browser.newPage()
    await page.addScriptTag({ content: code })
    return page.evaluate(
      async ([given, times, what]) => {
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
        return { ...timed(given, times, what), frames }
      },
      [gates, count, work] as const,
    )
  })
}
