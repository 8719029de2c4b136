import { spawn, type ChildProcess } from 'node:child_process'
import { inProject } from './paths.ts'

/** A loopback host running as a program of its own on a book, as the person runs it. */
export type Hosted = { address: string; origin: string; pid: number; stop: () => Promise<void> }

const key = 'a-key-for-tests-and-pictures-alone-0123456789'

function addressFrom(child: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    let said = ''
    child.stdout?.on('data', (piece: Buffer) => {
      said += piece.toString()
      const found = /http:\/\/127\.0\.0\.1:\d+\S*/.exec(said)
      if (found) resolve(found[0])
    })
    child.stderr?.on('data', (piece: Buffer) => (said += piece.toString()))
    child.once('exit', (code) => reject(new Error(`the host ended with ${code}: ${said}`)))
  })
}

/** Starts a host on a book's file and a free port; empty: a new book gets no sample jobs. Stop it when done: it is a process. */
export async function hosted(book: string, { empty = false }: { empty?: boolean } = {}): Promise<Hosted> {
  const script = inProject('electron/loopback/serve.ts')
  const flags = ['--book', book, '--fixed-key', key, ...(empty ? ['--empty'] : [])]
  const child = spawn(process.execPath, ['--no-warnings', script, ...flags], {
    stdio: ['ignore', 'pipe', 'pipe'],
  })
  const address = await addressFrom(child)
  const ended = new Promise<void>((resolve) => child.once('exit', () => resolve()))
  const stop = async () => {
    child.kill('SIGTERM')
    await ended
  }
  return { address, origin: new URL(address).origin, pid: child.pid ?? 0, stop }
}
