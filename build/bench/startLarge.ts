import { readFileSync } from 'node:fs'
import type { Browser } from '@playwright/test'
import { bundleIfStale } from '../bundle.ts'
import { hosted } from '../hosted.ts'
import { inChromium } from './browser.ts'
import { bookSizes, withLargeFile } from '../largeBook/openLarge.ts'
import { median, written, type Effort, type Measured } from './row.ts'

const aim = 1.5

/** One start: ms from the program's start to the first job that can be pressed, MB of the host, MB of the page's own heap. */
type Start = { ms: number; hostMb: number; heapMb: number }

/** MB a process takes up, where the system tells. */
function residentMb(pid: number): number {
  const kb = /VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1]
  return Number(kb ?? 0) / 1024
}

const heapOf = (): number => {
  const { memory } = performance as Performance & { memory?: { usedJSHeapSize: number } }
  return (memory?.usedJSHeapSize ?? 0) / 2 ** 20
}

async function started(browser: Browser, path: string): Promise<Start> {
  const start = performance.now()
  const host = await hosted(path)
  try {
    const page = await browser.newPage()
    await page.goto(host.address)
    await page.locator('a[href^="#/job"]').first().waitFor()
    const ms = performance.now() - start
    const heapMb = await page.evaluate(heapOf)
    await page.close()
    return { ms, hostMb: residentMb(host.pid), heapMb }
  } finally {
    await host.stop()
  }
}

/** From the program's start to the first useful screen with 100,000 jobs in the book, against 1,000. */
export async function startLarge(effort: Effort): Promise<Measured> {
  await bundleIfStale()
  const { small, large } = bookSizes(effort)
  const [few, many]: [Start[], Start[]] = [[], []]
  await withLargeFile(small, (one) =>
    withLargeFile(large, (other) =>
      inChromium(async (browser) => {
        for (let turn = 0; turn <= (effort.quick ? 0 : 5); turn += 1) {
          few.push(await started(browser, one))
          many.push(await started(browser, other))
        }
      }),
    ),
  )
  // The first start of each finds the browser and the disk cold.
  const counted = (starts: Start[]): Start[] => (starts.length > 1 ? starts.slice(1) : starts)
  const of = (starts: Start[], key: keyof Start): number => median(counted(starts).map((one) => one[key]))
  const ratio = of(many, 'ms') / of(few, 'ms')
  return {
    row: {
      ...{
        name: 'start-100k',
        value: of(many, 'ms'),
        unit: 'ms',
        against: 'the same with 1,000 jobs',
        ratio,
        aim,
      },
      holds: ratio <= aim,
    },
    said: [
      `from the host’s start to the first job on the page: ${written(of(many, 'ms'))} ms against ${written(of(few, 'ms'))} ms (median of ${counted(many).length}); very first ${written(many[0]?.ms ?? 0)} ms`,
      `memory: host ${written(of(many, 'hostMb'))} MB against ${written(of(few, 'hostMb'))} MB, page’s heap ${written(of(many, 'heapMb'))} MB against ${written(of(few, 'heapMb'))} MB`,
    ],
  }
}
