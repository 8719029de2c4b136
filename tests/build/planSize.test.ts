import { build } from 'vite'
import { expect, test } from 'vitest'
import { inProject } from '../../build/paths.ts'

/** What the cheap laptop has to read before a plan can be worked out: asked to be no more than 40 kB minified, bytes. */
const most = 40 * 1024

/** The planner alone, without the parser of requests, as one minified module. */
async function minified(): Promise<string> {
  const made = await build({
    configFile: false,
    root: inProject('.'),
    logLevel: 'error',
    publicDir: false,
    build: {
      write: false,
      minify: true,
      target: 'es2022',
      lib: { entry: inProject('shared/cutting/buyingPlan/plan.ts'), formats: ['iife'], name: 'planner' },
    },
  })
  const [bundle] = [made].flat()
  if (!bundle || !('output' in bundle)) throw new Error('the planner was not bundled')
  return bundle.output.map((one) => (one.type === 'chunk' ? one.code : '')).join('')
}

test('the planner is small, and takes nothing but itself', { timeout: 60_000 }, async () => {
  const code = await minified()
  const bytes = Buffer.byteLength(code)
  process.stdout.write(`The planner minified: ${bytes} bytes, at most ${most}\n`)
  expect(bytes).toBeGreaterThan(10_000)
  expect(bytes).toBeLessThanOrEqual(most)
  expect(code).not.toMatch(/\bimport\b/)
})
