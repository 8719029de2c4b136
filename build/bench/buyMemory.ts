import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { build } from 'vite'
import { inProject } from '../paths.ts'
import { requestOf, type Scale } from './buyingRequests.ts'
import type { ChildAsk, ChildTold } from './planningChild.ts'
import { written, type Effort, type Measured } from './row.ts'

const first = 20261125

/** Bundled as it is delivered: Node's own reading of TypeScript takes memory that no joiner's laptop spends. */
async function bundled(outDir: string): Promise<string> {
  await build({
    ...{ configFile: false, root: inProject('.'), logLevel: 'error', publicDir: false },
    build: {
      ...{ outDir, minify: true, target: 'es2023', emptyOutDir: false },
      lib: { entry: inProject('build/bench/planningChild.ts'), formats: ['es'], fileName: () => 'child.mjs' },
      rollupOptions: { external: /^node:/ },
    },
  })
  return join(outDir, 'child.mjs')
}

/** The most that a process of its own took for one ask, MB. */
function peakOf(child: string, ask: ChildAsk): number {
  const { status, stdout, stderr } = spawnSync(process.execPath, [child], {
    ...{ input: JSON.stringify(ask), encoding: 'utf8' },
  })
  if (status !== 0) throw new Error(`a plan's own process ended with ${status}: ${stderr}`)
  const { peak, faults } = JSON.parse(stdout) as ChildTold
  if (faults.length > 0) throw new Error(`a plan that doesn't hold: ${faults.join('; ')}`)
  return peak / 1024
}

/** most: asked for, MB in all, Node's own with it. */
type Sort = { scale: Scale; count: number; limitMs: number; most: number }

const sortsOf = (quick: boolean): Sort[] => [
  { scale: 'week', count: quick ? 1 : 5, limitMs: quick ? 200 : 10_000, most: 120 },
  { scale: 'quarter', count: quick ? 1 : 3, limitMs: quick ? 200 : 20_000, most: 200 },
]

/** Most memory at any time while a week's and a quarter's timber is planned and the plan looked over, each in a process of its own. */
export async function buyMemory({ quick }: Effort): Promise<Measured> {
  const folder = mkdtempSync(join(tmpdir(), 'bracework-memory-'))
  try {
    const child = await bundled(folder)
    const bare = peakOf(child, null)
    const peaks = sortsOf(quick).map(({ scale, count, limitMs, most }) => {
      const each = Array.from({ length: count }, (_, at) =>
        peakOf(child, { request: requestOf(scale, first + at), limitMs }),
      )
      return { scale, most, peak: Math.max(...each), count }
    })
    const [week] = peaks
    const ratio = Math.max(...peaks.map(({ peak, most }) => peak / most))
    return {
      row: {
        name: 'buy-memory',
        value: week?.peak ?? NaN,
        unit: 'MB',
        against: `120 MB for a week, 200 MB for a quarter, in all; the same process with nothing to plan takes ${written(bare)} MB`,
        ...{ ratio, aim: 1, holds: ratio <= 1 },
      },
      said: peaks.map(
        ({ scale, peak, most, count }) =>
          `${scale}: at most ${written(peak)} MB over ${count}, ${written(peak - bare)} MB of it for the plan and its check (asked: ${most})`,
      ),
    }
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}
