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

/** empty: a new book gets no sample jobs. under: a program that the host runs under, as a tracer does, with its own arguments. */
export type Hosting = { empty?: boolean; flags?: readonly string[]; under?: readonly string[] }

/** Starts a host on a book's file and a free port. Stop it when done: it is a process, or two of one group. */
export async function hosted(
  book: string,
  { empty = false, flags = [], under = [] }: Hosting = {},
): Promise<Hosted> {
  const own = ['--book', book, '--fixed-key', key, ...(empty ? ['--empty'] : []), ...flags]
  const [program = '', ...rest] = [
    ...under,
    process.execPath,
    '--no-warnings',
    inProject('electron/loopback/serve.ts'),
    ...own,
  ]
  const child = spawn(program, rest, { stdio: ['ignore', 'pipe', 'pipe'], detached: under.length > 0 })
  const address = await addressFrom(child)
  const ended = new Promise<void>((resolve) => child.once('exit', () => resolve()))
  const running = { yet: true }
  const stop = async () => {
    if (running.yet && under.length > 0) process.kill(-(child.pid ?? 0), 'SIGTERM')
    else child.kill('SIGTERM')
    running.yet = false
    await ended
  }
  return { address, origin: new URL(address).origin, pid: child.pid ?? 0, stop }
}
