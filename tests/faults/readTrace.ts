import { dirname, basename } from 'node:path'
import type { DiskEvent } from './recording.ts'

/** One call of the system as the tracer wrote it down: its arguments and what came back. */
type Call = { name: string; args: string[]; gave: string }

const unhexed = (hex: string): Buffer => Buffer.from(hex.replaceAll('\\x', ''), 'hex')
const textIn = (quoted: string): string => unhexed(quoted.slice(1, -1)).toString('utf8')

/** The path in `20<\x2f…>`, '' where the number stands for no file. */
const pathOf = (argument: string): string => {
  const from = argument.indexOf('<')
  return from < 0 ? '' : unhexed(argument.slice(from + 1, argument.indexOf('>', from))).toString('utf8')
}
const numberOf = (argument: string): number => Number.parseInt(argument, 10)

/** Splits at the commas between arguments: what is quoted or named is written in hex and holds none. */
const argumentsIn = (text: string): string[] => text.split(', ')

/** A line cut in two, because another thread's call came in between, is put together where it ended. */
function* wholeLines(trace: string): Generator<string> {
  const begun = new Map<string, string>()
  for (const line of trace.split('\n')) {
    const [, thread = '', rest = ''] = /^(\d+)\s+(.*)$/s.exec(line) ?? []
    if (rest.endsWith('<unfinished ...>')) begun.set(thread, rest.slice(0, -'<unfinished ...>'.length))
    else if (rest.startsWith('<... '))
      yield (begun.get(thread) ?? '') + rest.replace(/^<\.\.\. \w+ resumed>\s*/, '')
    else if (rest !== '') yield rest
  }
}

function callIn(line: string): Call | undefined {
  const opens = line.indexOf('(')
  const closes = line.lastIndexOf(') ')
  const equals = line.indexOf('= ', closes)
  if (opens < 0 || closes < 0 || equals < 0) return undefined
  const name = line.slice(0, opens)
  return { name, args: argumentsIn(line.slice(opens + 1, closes)), gave: line.slice(equals + 2) }
}

/** The offset at which the next plain `write` of a descriptor goes on. */
type Places = Map<number, number>

type Reading = { folder: string; places: Places; known: Set<string>; events: DiskEvent[] }

const inFolder = ({ folder }: Reading, path: string): boolean => dirname(path) === folder

function opened(reading: Reading, { args, gave }: Call): void {
  const [, file = '', flags = ''] = args
  const number = numberOf(gave)
  const path = pathOf(gave)
  if (number < 0 || file === '' || !inFolder(reading, path)) return
  const name = basename(path)
  const size = reading.known.has(name) ? undefined : 0
  if (flags.includes('O_CREAT') && size === 0) reading.events.push({ kind: 'made', name })
  if (flags.includes('O_TRUNC')) reading.events.push({ kind: 'cut', name, size: 0 })
  if (flags.includes('O_APPEND'))
    throw new Error(`the recorder can’t follow a file that is added to: ${name}`)
  if (flags.includes('O_CREAT')) reading.known.add(name)
  reading.places.set(number, 0)
}

function wrote(reading: Reading, { name: call, args, gave }: Call): void {
  const [file = '', quoted = '""', , offset = ''] = args
  const number = numberOf(file)
  const count = numberOf(gave)
  if (count <= 0) return
  const bytes = unhexed(quoted.slice(1, -1)).subarray(0, count)
  if (number === 1 && call === 'write') reading.events.push({ kind: 'said', words: bytes.toString('utf8') })
  const path = pathOf(file)
  if (!inFolder(reading, path)) return
  const at = call === 'pwrite64' ? Number(offset) : (reading.places.get(number) ?? 0)
  if (call === 'write') reading.places.set(number, at + count)
  reading.events.push({ kind: 'wrote', name: basename(path), at, bytes })
}

function forced(reading: Reading, { args: [file = ''] }: Call): void {
  const path = pathOf(file)
  if (path === reading.folder) reading.events.push({ kind: 'forced folder' })
  // A folder within is no file of the book's: the copies beside it are looked at by tests of their own.
  else if (inFolder(reading, path) && reading.known.has(basename(path)))
    reading.events.push({ kind: 'forced', name: basename(path) })
}

function renamed(reading: Reading, { name, args }: Call): void {
  const [from = '', to = ''] = args.filter((argument) => argument.startsWith('"')).map(textIn)
  if (!inFolder(reading, from) && !inFolder(reading, to)) return
  if (dirname(from) !== dirname(to)) throw new Error(`the recorder follows one folder, not ${from} to ${to}`)
  const kind = name.startsWith('link') ? 'linked' : 'renamed'
  if (kind === 'renamed') reading.known.delete(basename(from))
  reading.known.add(basename(to))
  reading.events.push({ kind, name: basename(from), to: basename(to) })
}

function removed(reading: Reading, { args }: Call): void {
  const path = textIn(args.find((argument) => argument.startsWith('"')) ?? '""')
  if (!inFolder(reading, path)) return
  reading.known.delete(basename(path))
  reading.events.push({ kind: 'removed', name: basename(path) })
}

/** The book's shared index is the one file that is written through memory: it is made anew after a cut and holds nothing. */
const isIndex = (path: string): boolean => path.endsWith('-shm')

/** A call that changes files in a way not followed here: the recording would be wrong, so the test ends. */
function strange(reading: Reading, { name, args }: Call): void {
  const path = args.map(pathOf).find((one) => inFolder(reading, one) && !isIndex(one))
  const harmless = name === 'mmap' && !args.some((argument) => argument.includes('MAP_SHARED'))
  if (path !== undefined && !harmless) throw new Error(`the recorder can’t follow ${name} on ${path}`)
}

const ignored = new Set(['close', 'mkdir', 'lseek', 'dup', 'dup2', 'dup3', 'sync_file_range'])

function follow(reading: Reading, call: Call): void {
  const { name, args, gave } = call
  if (gave.startsWith('-1') || ignored.has(name)) return
  if (name === 'openat' || name === 'open' || name === 'creat') return opened(reading, call)
  if (name === 'write' || name === 'pwrite64') return wrote(reading, call)
  if (name === 'fsync' || name === 'fdatasync') return forced(reading, call)
  if (name.startsWith('rename') || name.startsWith('link')) return renamed(reading, call)
  if (name.startsWith('unlink')) return removed(reading, call)
  if (name !== 'ftruncate') return strange(reading, call)
  const path = pathOf(args[0] ?? '')
  if (inFolder(reading, path))
    reading.events.push({ kind: 'cut', name: basename(path), size: Number(args[1]) })
}

/** All that a trace says of one folder, in order. `there` names the files that were in it before. */
export function readTrace(trace: string, folder: string, there: Iterable<string> = []): DiskEvent[] {
  const reading: Reading = { folder, places: new Map(), known: new Set(there), events: [] }
  for (const line of wholeLines(trace)) {
    const call = callIn(line)
    if (call) follow(reading, call)
  }
  return reading.events.filter((event) => !('name' in event && isIndex(event.name)))
}
