import { spawn, type ChildProcess } from 'node:child_process'
import { once } from 'node:events'
import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { _electron, chromium, type BrowserContext, type Page } from '@playwright/test'
import { electronBinary } from '../../build/electronBinary.ts'
import { quietFlags } from '../../build/chromium.ts'
import { chromiumPath } from '../../build/machine.ts'
import { inProject, projectRoot } from '../../build/paths.ts'
import { hasScreen } from '../../build/startChoice.ts'

/** What the program's window did, as the stand-in saw it. */
export type Seen = { asked: string[]; shown: number; switches: Record<string, string | true> }

/** The built program with its window open, in Electron itself or in the stand-in that drives a browser. */
export type ShellWindow = {
  /** Which of them, in words for the test's report. */
  used: string
  page: () => Page
  /** Kills the screen. The page that comes back is looked at by `look`, since a driver of Electron loses a page that died. */
  die: () => Promise<void>
  /** What a piece of script gives in the screen as it is now. */
  look: (script: string) => Promise<unknown>
  /** Says to the program: another start, or a screen that hangs. The stand-in alone can say these. */
  say?: (word: `second start${string}` | 'hang') => Promise<void>
  close: () => Promise<Seen | undefined>
}

const portOf = async (profile: string): Promise<string> => {
  const note = join(profile, 'DevToolsActivePort')
  while (!existsSync(note) || readFileSync(note, 'utf8').split('\n').length < 2)
    await new Promise((done) => setTimeout(done, 20))
  return `http://127.0.0.1:${readFileSync(note, 'utf8').split('\n')[0]}`
}

const nextPage = async (context: BrowserContext): Promise<Page> => {
  const page = await context.waitForEvent('page')
  await page.waitForURL('https://bracework/**')
  return page
}

const endOf = async (child: ChildProcess, said: { out: string }): Promise<Seen> => {
  const ended = once(child, 'exit')
  child.stdin?.write('end\n')
  await ended
  return JSON.parse(said.out).seen
}

const inStandIn = async (folder: string, env: NodeJS.ProcessEnv): Promise<ShellWindow> => {
  const profile = join(folder, 'profile')
  const context = await chromium.launchPersistentContext(profile, {
    executablePath: chromiumPath() ?? '',
    args: [...quietFlags, '--remote-debugging-port=0'],
    viewport: { width: 1093, height: 614 },
  })
  const endpoint = await portOf(profile)
  const first = nextPage(context)
  const child = spawn(
    process.execPath,
    ['--import', inProject('tests/electron/standIn/register.ts'), inProject('build/out/main/main.cjs')],
    {
      env: { ...env, STAND_IN_BROWSER: endpoint, STAND_IN_FOLDER: folder },
      stdio: ['pipe', 'pipe', 'inherit'],
    },
  )
  const said = { out: '' }
  child.stdout?.on('data', (chunk) => void (said.out += String(chunk)))
  const now = { page: await first }
  const say = async (word: string): Promise<void> => void child.stdin?.write(`${word}\n`)
  return {
    used: `a stand-in for Electron driving ${context.browser()?.version() ?? 'Chromium'}`,
    page: () => now.page,
    die: async () => {
      const next = nextPage(context)
      const session = await context.newCDPSession(now.page)
      session.send('Page.crash').catch(() => undefined)
      now.page = await next
    },
    look: (script) => now.page.evaluate(script),
    say,
    close: async () => {
      const seen = await endOf(child, said)
      await context.close()
      return seen
    },
  }
}

const inElectron = async (program: string, folder: string, env: NodeJS.ProcessEnv): Promise<ShellWindow> => {
  const named = Object.entries(env).flatMap(([name, value]) => (value === undefined ? [] : [[name, value]]))
  const app = await _electron.launch({
    executablePath: program,
    args: [projectRoot, `--user-data-dir=${folder}`, ...(process.getuid?.() === 0 ? ['--no-sandbox'] : [])],
    env: Object.fromEntries(named),
  })
  const page = await app.firstWindow()
  const version = await app.evaluate(() => process.versions['electron'])
  return {
    used: `Electron ${version} at ${program}`,
    page: () => page,
    die: () =>
      app.evaluate(({ BrowserWindow }) =>
        BrowserWindow.getAllWindows()[0]?.webContents.forcefullyCrashRenderer(),
      ),
    look: (script) =>
      app.evaluate(
        ({ BrowserWindow }, code) =>
          BrowserWindow.getAllWindows()[0]?.webContents.executeJavaScript(code) as Promise<unknown>,
        script,
      ),
    close: async () => {
      await app.close()
      return undefined
    },
  }
}

/** Opens the built program on a book: in Electron where it and a screen are there, else in the stand-in. */
export const openShell = (
  folder: string,
  book: string,
  more: NodeJS.ProcessEnv = {},
): Promise<ShellWindow> => {
  const env = { ...process.env, BRACEWORK_BOOK: book, ...more }
  const program = electronBinary()
  const canShow = hasScreen({ platform: process.platform, env: process.env })
  return program !== undefined && canShow ? inElectron(program, folder, env) : inStandIn(folder, env)
}
