import { EventEmitter } from 'node:events'
import { readFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { runInNewContext } from 'node:vm'
import { playPerson } from './person.ts'

/**
 * Stands in for the electron module, so that the built main process and preload run whole in plain Node: the window
 * loads its page through the program's own protocol, its preload runs in a context of its own that can require nothing
 * but `electron`, and its requests cross as copies, as they do between processes.
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
} = { options: undefined, menu: undefined, errors: [], privileged: undefined, sandboxed: false, handled: [] }

class App extends EventEmitter {
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

export const dialog = { showErrorBox: (_title: string, text: string): void => void seen.errors.push(text) }

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

export const session = {
  defaultSession: {
    setPermissionRequestHandler: silent,
    setPermissionCheckHandler: silent,
    setDevicePermissionHandler: silent,
    webRequest: { onBeforeRequest: silent },
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

class Contents extends EventEmitter {
  readonly id = 5
  setWindowOpenHandler(): void {}
}

export class BrowserWindow extends EventEmitter {
  readonly webContents = new Contents()
  readonly #preload: string
  constructor(options: { webPreferences: { preload: string } }) {
    super()
    seen.options = options
    this.#preload = options.webPreferences.preload
    app.emit('web-contents-created', {}, this.webContents)
  }
  show(): void {}
  async loadURL(url: string): Promise<void> {
    const load = (address: string): Promise<Response> => {
      const answer = schemes.get(new URL(address).protocol.slice(0, -1))
      if (!answer) throw new Error(`nobody serves ${address}`)
      return answer(new Request(address))
    }
    const event = { senderFrame: { url, parent: null }, sender: { id: this.webContents.id } }
    const stranger = { senderFrame: { url: 'https://example.org/', parent: null }, sender: event.sender }
    const world = runPreload(this.#preload, event)
    this.emit('ready-to-show')
    const report = await playPerson({ url, load, world, asStranger: (name) => carry(stranger, name, {}) })
    app.emit('window-all-closed')
    process.stdout.write(JSON.stringify({ seen, report }))
  }
}
