import { spawnSync } from 'node:child_process'
import { inProject, projectRoot } from './paths.ts'

/** Runs Vitest over what args name (everything when they name nothing), in the foreground. Gives its exit code. */
export const runVitest = (args: readonly string[], env: Readonly<Record<string, string>> = {}): number => {
  const vitest = inProject('node_modules/vitest/vitest.mjs')
  const { status } = spawnSync(
    process.execPath,
    [vitest, 'run', '-c', inProject('build/vitest.config.ts'), ...args],
    {
      cwd: projectRoot,
      stdio: 'inherit',
      // Bundling before leaves 'production' behind, in which the screens' own test hooks are gone.
      env: { ...process.env, NODE_ENV: 'test', ...env },
    },
  )
  return status ?? 1
}
