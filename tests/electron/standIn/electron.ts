import { EventEmitter } from 'node:events'
import { readFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { runInNewContext } from 'node:vm'
import { openInBrowser, type BrowserPage } from './browserPage.ts'
import { playPerson } from './person.ts'

/**
 * Stands in for the electron module, so that the built main process and preload run whole in plain Node: the window
 * loads its page through the program's own protocol, its preload runs in a context of its own that can require nothing
 * but `electron`, and its requests cross as copies, as they do between processes. With STAND_IN_BROWSER, a Chromium's
 * address, the window is a page of that browser; without it a person is played (person.ts).
 */
type Handler = (...args: never[]) => unknown

const handlers = new Map<string, Handler>()
const schemes = new Map<string, (request: Request) => Promise<Response>>()

/** What the program did that a test wants to see. */
export const seen: {
  options: unknown
  menu: unknown
  errors: string[]
  privileged: unknown
  sandboxed: boolean
  handled: string[]
  switches: Record<string, string | true>
  asked: string[]
  shown: number
} = {
  options: undefined,
  menu: undefined,
  errors: [],
  privileged: undefined,
  sandboxed: false,
  handled: [],
  switches: {},
  asked: [],
  shown: 0,
}

class App extends EventEmitter {
  readonly commandLine = {
    appendSwitch: (name: string, value?: string): void => void (seen.switches[name] = value ?? true),
  }
  requestSingleInstanceLock(): boolean {
    return process.env['STAND_IN_SECOND'] !== '1'
  }
  enableSandbox(): void {
    seen.sandboxed = true
  }
  async whenReady(): Promise<void> {}
  getPath(name: string): string {
    return join(process.env['STAND_IN_FOLDER'] ?? tmpdir(), name)
  }
  quit(): void {
    this.emit('will-quit')
  }
  exit(code: number): void {
    process.stdout.write(JSON.stringify({ seen }))
    process.exitCode = code
  }
}

export const app = new App()

export const dialog = {
  showErrorBox: (_title: string, text: string): void => void seen.errors.push(text),
  /** The person presses the button that STAND_IN_PRESSES names, else the first. */
  showMessageBox: async (_window: unknown, { message, buttons }: { message: string; buttons: string[] }) => {
    seen.asked.push(message)
    return { response: Math.max(0, buttons.indexOf(process.env['STAND_IN_PRESSES'] ?? '')) }
  },
}

export const clipboard = { writeText: (): void => {} }

export const shell = { showItemInFolder: (): void => {} }

const display = { id: 1, workArea: { x: 0, y: 0, width: 1920, height: 1040 } }

export const screen = {
  getPrimaryDisplay: () => display,
  getAllDisplays: () => [display],
  on: (): void => {},
}

export const Menu = {
  buildFromTemplate: (template: unknown): unknown => template,
  setApplicationMenu: (menu: unknown): void => {
    seen.menu = menu
  },
}

export const protocol = {
  registerSchemesAsPrivileged: (privileged: unknown): void => {
    seen.privileged = privileged
  },
  handle: (scheme: string, answer: (request: Request) => Promise<Response>): void =>
    void schemes.set(scheme, answer),
}

const silent = (): undefined => undefined

type LoadQuestion = (details: { url: string }, answer: (given: { cancel: boolean }) => void) => void

const asks: { load?: LoadQuestion } = {}

const mayLoad = (url: string): boolean => {
  let cancelled = false
  asks.load?.({ url }, ({ cancel }) => void (cancelled = cancel))
  return !cancelled
}

export const session = {
  defaultSession: {
    setPermissionRequestHandler: silent,
    setPermissionCheckHandler: silent,
    setDevicePermissionHandler: silent,
    setSpellCheckerEnabled: silent,
    webRequest: { onBeforeRequest: (load: LoadQuestion): void => void (asks.load = load) },
    on: silent,
  },
}

export const ipcMain = {
  handle: (name: string, handler: Handler): void => {
    if (handlers.has(name)) throw new Error(`Attempted to register a second handler for '${name}'`)
    handlers.set(name, handler)
    seen.handled.push(name)
  },
}

/** Carries a call from a frame to the main process, copying what crosses. */
const carry = async (event: object, name: string, payload: unknown): Promise<unknown> => {
  const handler = handlers.get(name)
  if (!handler) throw new Error(`No handler registered for '${name}'`)
  return structuredClone(await handler(event as never, structuredClone(payload) as never))
}

type Bridge = Record<string, (payload: unknown) => Promise<unknown>>

const runPreload = (path: string, event: object): Record<string, Bridge> => {
  const world: Record<string, Bridge> = {}
  const forPreload = {
    contextBridge: { exposeInMainWorld: (name: string, bridge: Bridge) => void (world[name] = bridge) },
    ipcRenderer: { invoke: (name: string, payload: unknown) => carry(event, name, payload) },
  }
  const require = (name: string): unknown => {
    if (name !== 'electron') throw new Error(`a sandboxed preload can't require ${name}`)
    return forPreload
  }
  runInNewContext(readFileSync(path, 'utf8'), { require, exports: {}, module: { exports: {} } })
  return world
}

const answerAddress = (address: string): Promise<Response> => {
  const answer = schemes.get(new URL(address).protocol.slice(0, -1))
  if (!answer) throw new Error(`nobody serves ${address}`)
  return answer(new Request(address))
}

class Contents extends EventEmitter {
  readonly id = 5
  readonly #preload: string
  readonly #window: EventEmitter
  #page: BrowserPage | undefined
  opens: (details: { url: string }) => { action: 'allow' | 'deny' } = () => ({ action: 'allow' })
  constructor(preload: string, window: EventEmitter) {
    super()
    this.#preload = preload
    this.#window = window
  }
  setWindowOpenHandler(handler: (details: { url: string }) => { action: 'allow' | 'deny' }): void {
    this.opens = handler
  }
  forcefullyCrashRenderer(): void {
    void this.#page?.crash()
  }
  async loadURL(url: string): Promise<void> {
    const endpoint = process.env['STAND_IN_BROWSER']
    if (endpoint === undefined) return this.#playPerson(url)
    this.#page ??= await openInBrowser(endpoint, {
      preload: readFileSync(this.#preload, 'utf8'),
      load: answerAddress,
      mayLoad,
      carry: (senderFrame, name, payload) => carry({ senderFrame, sender: { id: this.id } }, name, payload),
      mayOpen: (address) => this.opens({ url: address }).action === 'allow',
      tell: (event, ...args) => void this.emit(event, ...args),
      window: (event) => void this.#window.emit(event),
      secondStart: (args) => void app.emit('second-instance', {}, ['bracework', ...args], tmpdir()),
      end: () => {
        this.#window.emit('close')
        app.emit('window-all-closed')
        process.stdout.write(`${JSON.stringify({ seen })}\n`, () => process.exit())
      },
    })
    await this.#page.show(url)
    this.#window.emit('ready-to-show')
  }
  async #playPerson(url: string): Promise<void> {
    const event = { senderFrame: { url, parent: null }, sender: { id: this.id } }
    const stranger = { senderFrame: { url: 'https://example.org/', parent: null }, sender: event.sender }
    const world = runPreload(this.#preload, event)
    this.#window.emit('ready-to-show')
    const asStranger = (name: string): Promise<unknown> => carry(stranger, name, {})
    const report = await playPerson({ url, load: answerAddress, world, asStranger })
    this.#window.emit('close')
    app.emit('window-all-closed')
    process.stdout.write(JSON.stringify({ seen, report }))
  }
}

type Options = { x: number; y: number; width: number; height: number; webPreferences: { preload: string } }

export class BrowserWindow extends EventEmitter {
  readonly webContents: Contents
  readonly #options: Options
  constructor(options: Options) {
    super()
    seen.options = options
    this.#options = options
    this.webContents = new Contents(options.webPreferences.preload, this)
    app.emit('web-contents-created', {}, this.webContents)
  }
  getNormalBounds(): { x: number; y: number; width: number; height: number } {
    const { x, y, width, height } = this.#options
    return { x, y, width, height }
  }
  isMaximized(): boolean {
    return false
  }
  isDestroyed(): boolean {
    return false
  }
  isMinimized(): boolean {
    return false
  }
  show(): void {
    seen.shown += 1
  }
  focus(): void {}
  loadURL(url: string): Promise<void> {
    return this.webContents.loadURL(url)
  }
}
