import { createHash } from 'node:crypto'
import { existsSync, realpathSync, rmSync } from 'node:fs'
import { connect, createServer, type Server } from 'node:net'
import { tmpdir } from 'node:os'
import { basename, dirname, join, resolve } from 'node:path'

/** Held as long as this program has the book open. */
export type BookLock = { release: () => Promise<void> }

const trueName = (path: string): string => {
  const whole = resolve(path)
  if (existsSync(whole)) return realpathSync(whole)
  const folder = dirname(whole)
  return join(existsSync(folder) ? realpathSync(folder) : folder, basename(whole))
}

/**
 * A name only one process on the machine can listen on, made from the book's true path. The operating system takes
 * it back when the process ends however it ends, so a power cut leaves no stale lock (on a Mac, a dead name is told
 * from a live one by calling it).
 */
const lockName = (path: string, platform: NodeJS.Platform): string => {
  const mark = createHash('sha256').update(trueName(path)).digest('hex').slice(0, 32)
  if (platform === 'win32') return `\\\\.\\pipe\\bracework-${mark}`
  return platform === 'linux' ? `\0bracework-${mark}` : join(tmpdir(), `bracework-${mark}`)
}

const inUse = (error: unknown): boolean =>
  error instanceof Error && 'code' in error && error.code === 'EADDRINUSE'

const listen = (name: string): Promise<Server | undefined> =>
  new Promise((done, fail) => {
    const server = createServer((socket) => socket.destroy())
    server.once('error', (error) => (inUse(error) ? done(undefined) : fail(error)))
    server.listen(name, () => done(server.unref()))
  })

const answersAt = (name: string): Promise<boolean> =>
  new Promise((done) => {
    const socket = connect(name)
    socket.once('connect', () => done(true)).once('error', () => done(false))
    socket.once('close', () => socket.destroy())
  })

/** Takes the book for this process, or gives undefined when another one has it open. */
export const holdBook = async (path: string, platform = process.platform): Promise<BookLock | undefined> => {
  const name = lockName(path, platform)
  let server = await listen(name)
  if (!server && platform !== 'win32' && platform !== 'linux' && !(await answersAt(name))) {
    rmSync(name, { force: true })
    server = await listen(name)
  }
  if (!server) return undefined
  const held = server
  return { release: () => new Promise((done) => held.close(() => done())) }
}
