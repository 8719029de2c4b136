import { fileURLToPath } from 'node:url'
import { vueWithLanguage } from './language/vueWithLanguage.ts'
import { configDefaults, defineConfig } from 'vitest/config'

const root = fileURLToPath(new URL('..', import.meta.url))
const soak = process.env['BRACEWORK_SOAK'] === '1'
const minute = 60_000

/** Tests of the whole program that hold nothing against a clock and build nothing: they may run beside others. */
const pages = [
  ...['look', 'sweep', 'money', 'timber', 'prices', 'cards', 'notes', 'openBook', 'keeping', 'language'],
  ...['scriptWords', 'takeBack', 'jobBook', 'entries', 'wholeGates', 'morePapers', 'noNetwork', 'told'],
  ...['twoWindows', 'brokenDisk', 'samePlan', 'timberTooLong'],
].map((name) => `tests/e2e/${name}.test.ts`)
const pageTests = [...pages, 'tests/e2e/coreTasks/**/*.test.ts', 'tests/build/bench.test.ts']

/**
 * Four kinds of test. `rooms` runs in plain Node; `screens` mounts components in happy-dom; `pages` walks through the program in a browser; `whole`
 * builds, packages or holds what the person sees against a clock, so its files run by themselves, one after another. A soak run lifts the limit to an hour.
 */
export default defineConfig({
  root,
  plugins: [vueWithLanguage()],
  test: {
    maxWorkers: 2,
    passWithNoTests: false,
    restoreMocks: true,
    // What is waited for comes at once on a quiet machine, and on one busy with other things when it can.
    expect: { poll: { timeout: 20_000 } },
    coverage: { provider: 'v8', include: ['shared/**', 'db/**', 'electron/**', 'renderer/**'] },
    projects: [
      {
        extends: true,
        test: {
          name: 'rooms',
          environment: 'node',
          include: ['tests/**/*.test.ts'],
          exclude: [...configDefaults.exclude, 'tests/renderer/**', 'tests/e2e/**', 'tests/build/**'],
          testTimeout: soak ? 60 * minute : 3 * minute,
          hookTimeout: 3 * minute,
        },
      },
      {
        extends: true,
        test: {
          name: 'screens',
          environment: 'happy-dom',
          include: ['tests/renderer/**/*.test.ts'],
          setupFiles: ['tests/renderer/speaking.ts'],
          testTimeout: 3 * minute,
        },
      },
      {
        extends: true,
        test: {
          name: 'pages',
          environment: 'node',
          include: pageTests,
          testTimeout: soak ? 60 * minute : 3 * minute,
          hookTimeout: 3 * minute,
        },
      },
      {
        extends: true,
        test: {
          name: 'whole',
          environment: 'node',
          include: ['tests/e2e/**/*.test.ts', 'tests/build/**/*.test.ts'],
          exclude: [...configDefaults.exclude, ...pageTests],
          fileParallelism: false,
          testTimeout: soak ? 60 * minute : 3 * minute,
          hookTimeout: 3 * minute,
        },
      },
    ],
  },
})
