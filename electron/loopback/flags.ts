import { parseArgs } from 'node:util'

/**
 * How the host is started: `node electron/loopback/serve.ts [--book FILE] [--port N] [--open] [--empty]
 * [--idle MINUTES] [--fixed-key KEY]`.
 * book: the book's file (else where the book usually lies). port: the book's usual one unless given, or any free one where that is taken. open: open the browser.
 * empty: a new book gets no sample jobs. idle: after so many minutes without a page open the book is closed; 30 unless given, 0 for never.
 * fixedKey: a key that opens any number of times, for tests; never use it for a real book.
 */
export type Flags = {
  book: string | undefined
  port: number
  open: boolean
  empty: boolean
  idle: number
  fixedKey: string | undefined
}

/** Reads the command line. Throws with a plain sentence on a flag it doesn't know or a port that is none. */
export const readFlags = (args: string[]): Flags => {
  const { values } = parseArgs({
    args,
    options: {
      book: { type: 'string' },
      port: { type: 'string', default: '0' },
      open: { type: 'boolean', default: false },
      empty: { type: 'boolean', default: false },
      idle: { type: 'string', default: '30' },
      'fixed-key': { type: 'string' },
    },
  })
  const port = Number(values.port)
  if (!Number.isInteger(port) || port < 0 || port > 65535)
    throw new Error(`--port takes 0 to 65535, got ${values.port}`)
  const idle = Number(values.idle)
  if (values.idle.trim() === '' || !(idle >= 0 && idle <= 10_000))
    throw new Error(`--idle takes minutes from 0 to 10000, got ${values.idle}`)
  const { book, open, empty } = values
  return { book, port, open, empty, idle, fixedKey: values['fixed-key'] }
}
