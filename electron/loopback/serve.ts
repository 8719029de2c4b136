import { homedir } from 'node:os'
import { resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import { BookProblem } from '../../db/bookProblem.ts'
import { folderWarning } from '../../shared/folderWarning.ts'
import { bookPlace } from '../bookPlace.ts'
import { catchFaults } from '../catchFaults.ts'
import { faultWords } from '../discreet.ts'
import { logLine, now } from '../log.ts'
import { makeCard, warmPainter } from '../makeCard.ts'
import { makeBenchPaper } from '../makeBenchPaper.ts'
import { makeQuotation } from '../makeQuotation.ts'
import { openedBook, type OpenedBook } from '../openedBook.ts'
import { readFlags, type Flags } from './flags.ts'
import { startHost, type Host, type HostOptions } from './host.ts'
import { watchIdle } from './idle.ts'
import { openBrowser } from './openBrowser.ts'
import { usualPort } from './usualPort.ts'

const rendererFolder = fileURLToPath(new URL('../../build/out/renderer/', import.meta.url))

const say = (line: string): void => {
  process.stdout.write(`${line}\n`)
}

const offer = (host: Host): string => {
  const address = host.newAddress()
  say(`Bracework is open at ${address}`)
  return address
}

/** Each Enter in the terminal gives another address, for another browser or one that forgot its first. */
const offerMore = (host: Host): void => {
  if (!process.stdin.isTTY) return
  say('Press Enter for another address, Ctrl-C to close the book.')
  process.stdin.on('data', () => offer(host))
}

const closeAll = (host: Host, book: OpenedBook): void => {
  void host
    .close()
    .then(() => book.close())
    .then(() => process.exit(0))
}

const closeOnSignal = (close: () => void): void => {
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.once(signal, close)
}

const portTaken = (error: unknown): boolean =>
  error instanceof Error && 'code' in error && (error.code === 'EADDRINUSE' || error.code === 'EACCES')

/** On the port asked for; else on the book's usual one, or any free one where that is taken. */
const hostOn = async (path: string, options: HostOptions & { port: number }): Promise<Host> => {
  if (options.port !== 0) return startHost(options)
  try {
    return await startHost({ ...options, port: usualPort(path) })
  } catch (error) {
    if (!portTaken(error)) throw error
    return startHost(options)
  }
}

const painters = { makeCard, makeQuotation, makeBenchPaper }

const serve = async ({ book: file, port, open, empty, idle, fixedKey }: Flags): Promise<void> => {
  const path = resolve(file ?? bookPlace({ platform: process.platform, env: process.env, home: homedir() }))
  const book = await openedBook({
    path,
    now,
    ...painters,
    print: null,
    warm: warmPainter,
    log: logLine,
    empty,
  })
  const watch = watchIdle(idle)
  const host = await hostOn(path, {
    heard: watch.heard,
    rendererFolder,
    answer: book.answer,
    log: logLine,
    port,
    ...(fixedKey !== undefined && { fixedKey }),
  })
  const close = (): void => closeAll(host, book)
  closeOnSignal(close)
  watch.start(() => {
    say(`No page of the book has been open for ${idle} minutes, so it was closed. Start it again to go on.`)
    close()
  })
  const warning = folderWarning(book.folder)
  if (warning !== undefined) say(warning)
  const address = offer(host)
  offerMore(host)
  if (open) openBrowser(address)
}

/** The flags as they were given; undefined, with one sentence said, where they can't be taken. */
const flagsGiven = (): Flags | undefined => {
  try {
    return readFlags(process.argv.slice(2))
  } catch (error) {
    process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`)
    return undefined
  }
}

const start = async (): Promise<number> => {
  const flags = flagsGiven()
  if (!flags) return 2
  catchFaults(process, logLine)
  try {
    await serve(flags)
    return 0
  } catch (error) {
    const known = error instanceof BookProblem
    if (!known) logLine(`couldn’t start: ${faultWords(error)}`)
    process.stderr.write(`${known ? error.message : 'Bracework couldn’t start. Start it once more.'}\n`)
    return 1
  }
}

process.exitCode = await start()
