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

type Reading = {
  folder: string
  places: Places
  known: Set<string>
  folders: Set<string>
  events: DiskEvent[]
}

/** A path's name from the folder on; undefined of what lies elsewhere. */
const nameIn = ({ folder }: Reading, path: string): string | undefined =>
  path.startsWith(`${folder}/`) ? path.slice(folder.length + 1) : undefined

function opened(reading: Reading, { args, gave }: Call): void {
  const [, file = '', flags = ''] = args
  const number = numberOf(gave)
  const name = nameIn(reading, pathOf(gave))
  if (number < 0 || file === '' || name === undefined) return
  const size = reading.known.has(name) ? undefined : 0
  if (flags.includes('O_CREAT') && size === 0) reading.events.push({ kind: 'made', name })
  if (flags.includes('O_TRUNC')) reading.events.push({ kind: 'cut', name, size: 0 })
  if (flags.includes('O_APPEND'))
    throw new Error(`the recorder can’t follow a file that is added to: ${name}`)
  if (flags.includes('O_CREAT')) reading.known.add(name)
  reading.places.set(number, 0)
}

/** Where a call that names no offset writes: on from the last such. */
function goesOn({ places }: Reading, number: number, count: number): number {
  const at = places.get(number) ?? 0
  places.set(number, at + count)
  return at
}

function wrote(reading: Reading, { name: call, args, gave }: Call): void {
  const [file = '', quoted = '""', , offset = ''] = args
  const number = numberOf(file)
  const count = numberOf(gave)
  if (count <= 0) return
  const bytes = unhexed(quoted.slice(1, -1)).subarray(0, count)
  if (number === 1 && call === 'write') reading.events.push({ kind: 'said', words: bytes.toString('utf8') })
  const name = nameIn(reading, pathOf(file))
  if (name === undefined) return
  const at = call === 'pwrite64' ? Number(offset) : goesOn(reading, number, count)
  reading.events.push({ kind: 'wrote', name, at, bytes })
}

/** Bytes that the system itself carried from one file to another: the source's offset is told before the call, `[0] => [4096]`, or is its own. */
function copied(reading: Reading, { name: call, args, gave }: Call): void {
  const [one = '', two = '', three = '', four = ''] = args
  const ways =
    call === 'sendfile'
      ? { from: two, fromAt: three, to: one, at: 'NULL' }
      : { from: one, fromAt: two, to: three, at: four }
  const count = numberOf(gave)
  const [name, from] = [nameIn(reading, pathOf(ways.to)), nameIn(reading, pathOf(ways.from))]
  if (name === undefined || count <= 0) return
  if (from === undefined) throw new Error(`the recorder can’t see what is copied from elsewhere to ${name}`)
  const offset = (file: string, told: string): number =>
    told.startsWith('[') ? numberOf(told.slice(1)) : goesOn(reading, numberOf(file), count)
  const fromAt = offset(ways.from, ways.fromAt)
  reading.events.push({ kind: 'copied', name, at: offset(ways.to, ways.at), from, fromAt, count })
}

function forced(reading: Reading, { args: [file = ''] }: Call): void {
  const path = pathOf(file)
  const name = path === reading.folder ? '' : nameIn(reading, path)
  if (name === undefined) return
  if (name === '' || reading.folders.has(name)) reading.events.push({ kind: 'forced folder', name })
  else if (reading.known.has(name)) reading.events.push({ kind: 'forced', name })
}

/** What was known under one name is known under another, with all that lies in it. */
function knownAs(names: Set<string>, from: string, to: string): void {
  for (const name of [...names])
    if (name === from || name.startsWith(`${from}/`)) {
      names.delete(name)
      names.add(to + name.slice(from.length))
    }
}

function renamed(reading: Reading, { name: call, args }: Call): void {
  const [from = '', to = ''] = args.filter((argument) => argument.startsWith('"')).map(textIn)
  const [name, other] = [nameIn(reading, from), nameIn(reading, to)]
  if (name === undefined && other === undefined) return
  if (name === undefined || other === undefined)
    throw new Error(`the recorder follows one folder, not ${from} to ${to}`)
  const kind = call.startsWith('link') ? 'linked' : 'renamed'
  if (kind === 'linked') reading.known.add(other)
  else for (const names of [reading.known, reading.folders]) knownAs(names, name, other)
  reading.events.push({ kind, name, to: other })
}

const firstPath = (reading: Reading, args: string[]): string | undefined =>
  nameIn(reading, textIn(args.find((argument) => argument.startsWith('"')) ?? '""'))

function removed(reading: Reading, { args }: Call): void {
  const name = firstPath(reading, args)
  if (name === undefined) return
  for (const names of [reading.known, reading.folders]) names.delete(name)
  reading.events.push({ kind: 'removed', name })
}

function madeFolder(reading: Reading, { args }: Call): void {
  const name = firstPath(reading, args)
  if (name === undefined) return
  reading.folders.add(name)
  reading.events.push({ kind: 'made folder', name })
}

/** The book's shared index is the one file that is written through memory: it is made anew after a cut and holds nothing. */
const isIndex = (path: string): boolean => path.endsWith('-shm')

/** A call that changes files in a way not followed here: the recording would be wrong, so the test ends. */
function strange(reading: Reading, { name, args }: Call): void {
  const path = args.map(pathOf).find((one) => nameIn(reading, one) !== undefined && !isIndex(one))
  const harmless = name === 'mmap' && !args.some((argument) => argument.includes('MAP_SHARED'))
  if (path !== undefined && !harmless) throw new Error(`the recorder can’t follow ${name} on ${path}`)
}

const ignored = new Set(['close', 'lseek', 'dup', 'dup2', 'dup3', 'sync_file_range'])

function follow(reading: Reading, call: Call): void {
  const { name, args, gave } = call
  if (gave.startsWith('-1') || ignored.has(name)) return
  if (name === 'openat' || name === 'open' || name === 'creat') return opened(reading, call)
  if (name === 'write' || name === 'pwrite64') return wrote(reading, call)
  if (name === 'fsync' || name === 'fdatasync') return forced(reading, call)
  if (name.startsWith('rename') || name.startsWith('link')) return renamed(reading, call)
  if (name.startsWith('unlink') || name === 'rmdir') return removed(reading, call)
  if (name.startsWith('mkdir')) return madeFolder(reading, call)
  if (name === 'copy_file_range' || name === 'sendfile') return copied(reading, call)
  if (name !== 'ftruncate') return strange(reading, call)
  const file = nameIn(reading, pathOf(args[0] ?? ''))
  if (file !== undefined) reading.events.push({ kind: 'cut', name: file, size: Number(args[1]) })
}

/** All that a trace says of one folder and those in it, in order. `there` and `folders` name what was in it before. */
export function readTrace(
  trace: string,
  folder: string,
  there: Iterable<string>,
  folders: Iterable<string>,
): DiskEvent[] {
  const reading: Reading = {
    ...{ folder, places: new Map(), events: [] },
    ...{ known: new Set(there), folders: new Set(folders) },
  }
  for (const line of wholeLines(trace)) {
    const call = callIn(line)
    if (call) follow(reading, call)
  }
  return reading.events.filter((event) => !('name' in event && isIndex(event.name)))
}
