import { spawn } from 'node:child_process'
import { bundleIsStale } from './newest.ts'
import { electronBinary, fetchElectron } from './electronBinary.ts'
import { inProject, projectRoot } from './paths.ts'
import { chooseStart, type Choice } from './startChoice.ts'

/** A window that ends with an error sooner than this never really opened: the browser is used instead. */
const openedAfter = 10_000

const say = (line: string): void => {
  process.stdout.write(`${line}\n`)
}

/** Runs a program in the foreground and gives its exit code; Ctrl-C and a stop signal reach it. */
const run = (program: string, args: string[]): Promise<number> =>
  new Promise((done) => {
    const child = spawn(program, args, { cwd: projectRoot, stdio: 'inherit' })
    const stop = (): void => {
      child.kill('SIGTERM')
    }
    process.once('SIGTERM', stop)
    process.on('SIGINT', () => undefined)
    child.once('error', () => done(1))
    child.once('exit', (code, signal) => {
      process.off('SIGTERM', stop)
      done(code ?? (signal === 'SIGINT' || signal === 'SIGTERM' ? 0 : 1))
    })
  })

const serve = (): Promise<number> =>
  run(process.execPath, [inProject('electron/loopback/serve.ts'), '--open', ...process.argv.slice(2)])

const choose = (mayFetch: boolean): Choice =>
  chooseStart(
    {
      platform: process.platform,
      env: process.env,
      napi: Number(process.versions['napi']),
      electron: electronBinary(),
    },
    mayFetch,
  )

const openWindow = async (electron: string): Promise<number> => {
  const began = performance.now()
  const code = await run(electron, [projectRoot])
  if (code === 0 || performance.now() - began > openedAfter) return code
  say('The window didn’t open, so Bracework opens in a browser.')
  return serve()
}

const show = async (choice: Choice): Promise<number> => {
  if (choice.show === 'window') return openWindow(choice.electron)
  say(choice.say)
  if (choice.show === 'refuse') return 1
  if (choice.show === 'browser') return serve()
  fetchElectron()
  return show(choose(false))
}

const start = async (): Promise<number> => {
  const choice = choose(true)
  if (choice.show !== 'refuse' && bundleIsStale()) {
    say('Making Bracework ready ...')
    const { bundle } = await import('./bundle.ts')
    await bundle()
  }
  return show(choice)
}

process.exitCode = await start()
