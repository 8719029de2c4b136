import { createInterface } from 'node:readline'
import { chromium, type Frame, type Page, type Request as Asked, type Route } from '@playwright/test'

/** A frame as Electron tells of it: its address, and its parent or null. */
export type SenderFrame = { url: string; parent: object | null }

/** The program's own side of the window, as the stand-in has it. */
export type Program = {
  preload: string
  load: (address: string) => Promise<Response>
  mayLoad: (address: string) => boolean
  carry: (frame: SenderFrame, name: string, payload: unknown) => Promise<unknown>
  mayOpen: (address: string) => boolean
  tell: (event: string, ...args: unknown[]) => void
  window: (event: string) => void
  secondStart: (args: string[]) => void
  end: () => void
}

export type BrowserPage = { show: (address: string) => Promise<void>; crash: () => Promise<void> }

/** A browser knows no app: scheme, so the program's addresses stand in it under https://bracework, which no network answers. */
const outside = (address: string): string => address.replace('app://bracework/', 'https://bracework/')
const inside = (address: string): string => address.replace('https://bracework/', 'app://bracework/')

/** The name the stand-in's carrier has in the page; in Electron nothing like it is there for the page to see. */
const carrier = 'standInCarry'

/** Runs the built preload in the outermost frame alone, where it can require nothing but `electron`. */
const preloadIn = (preload: string): string => `if (window === window.top) {
  const forPreload = {
    contextBridge: { exposeInMainWorld: (name, bridge) => { window[name] = bridge } },
    ipcRenderer: { invoke: (name, payload) => window.${carrier}(name, payload) },
  };
  const require = (name) => {
    if (name !== 'electron') throw new Error("a sandboxed preload can't require " + name);
    return forPreload;
  };
  (function (require, exports, module) { ${preload}
  })(require, {}, { exports: {} });
}`

const frameOf = (frame: Frame): SenderFrame => ({
  url: inside(frame.url()),
  parent: frame.parentFrame() ? {} : null,
})

/** Asks the program's listeners whether a page may go there, as Electron's own events do. */
const mayGo = ({ tell }: Program, request: Asked): boolean => {
  const url = inside(request.url())
  const event = { url, prevented: false, preventDefault: () => void (event.prevented = true) }
  tell(request.frame().parentFrame() ? 'will-frame-navigate' : 'will-navigate', event, url)
  return !event.prevented
}

const serve = async (program: Program, route: Route, isOurs: boolean): Promise<void> => {
  const request = route.request()
  const address = inside(request.url())
  if (request.isNavigationRequest() && !isOurs && !mayGo(program, request)) return route.abort('aborted')
  if (!program.mayLoad(address)) return route.abort('blockedbyclient')
  const answer = await program.load(address)
  const body = Buffer.from(await answer.arrayBuffer())
  await route.fulfill({ status: answer.status, headers: Object.fromEntries(answer.headers), body })
}

/** One page with the program behind it: its files, its preload, its listeners. */
const furnish = async (page: Page, program: Program, loading: { by: string }): Promise<void> => {
  await page.exposeBinding(carrier, ({ frame }, name: string, payload: unknown) =>
    program.carry(frameOf(frame), name, payload),
  )
  await page.addInitScript(preloadIn(program.preload))
  await page.route('**/*', (route) => serve(program, route, route.request().url() === loading.by))
  page.on('crash', () => program.tell('render-process-gone', {}, { reason: 'crashed', exitCode: 139 }))
  page.on('framenavigated', (frame) => {
    const isMain = frame === page.mainFrame()
    program.tell('did-navigate-in-page', {}, inside(frame.url()), isMain)
  })
  page.on('popup', (opened) => {
    if (!program.mayOpen(inside(opened.url()))) void opened.close()
  })
}

const listen = (program: Program): void => {
  createInterface({ input: process.stdin }).on('line', (line) => {
    if (line === 'end') program.end()
    if (line.startsWith('second start')) program.secondStart(line.split(' ').slice(2))
    if (line === 'hang') program.window('unresponsive')
  })
}

/** Opens the program's window as a page of a running Chromium. What a person or the machine does to it comes as lines on standard input. */
export const openInBrowser = async (endpoint: string, program: Program): Promise<BrowserPage> => {
  const browser = await chromium.connectOverCDP(endpoint)
  const [context = await browser.newContext()] = browser.contexts()
  const now: { page?: Page } = {}
  listen(program)
  const fresh = async (address: string): Promise<void> => {
    const before = now.page
    const loading = { by: outside(address).replace(/#.*/, '') }
    now.page = await context.newPage()
    await furnish(now.page, program, loading)
    await now.page.goto(outside(address))
    loading.by = ''
    await before?.close()
  }
  return {
    show: fresh,
    crash: async () => {
      if (!now.page) return
      const session = await context.newCDPSession(now.page)
      // The screen dies without an answer to this.
      session.send('Page.crash').catch(() => undefined)
    },
  }
}
