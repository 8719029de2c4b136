import type { Chance } from './seeded.ts'
import type { DiskEvent, Recording } from './recording.ts'

/** What a disk writes whole or not at all, bytes. */
const sector = 512

type Change = { at: number; bytes: Uint8Array } | { size: number }

/** A file's contents that are surely on the disk, and what was changed since it was last forced there. */
type File = { sure: Buffer; waiting: Change[] }

/** The files by name as the program sees them, as the disk surely has them, and the changes of names in between, in order. */
export type Disk = { files: Map<string, File>; sure: Map<string, File>; waiting: NameChange[] }

type NameChange =
  { name: string; file: File } | { name: string; to: string; keeps: boolean } | { name: string; gone: true }

/** How a power cut can treat what wasn't forced to the disk yet. */
export const manners = [
  'all of it lost',
  'all of it kept',
  'the first of it kept, the next torn',
  'the last of it kept alone',
  'any writes of it kept',
  'any sectors of it kept',
  'lengths kept, contents in part',
] as const
export type Manner = (typeof manners)[number]

/** Contents after changes, made in one piece of memory however many there are. */
function changed(contents: Uint8Array, changes: readonly Change[]): Buffer {
  const ends = changes.map((change) => ('size' in change ? change.size : change.at + change.bytes.length))
  const room = Buffer.alloc(Math.max(contents.length, ...ends))
  room.set(contents)
  let size = contents.length
  for (const change of changes) {
    if ('bytes' in change) {
      room.set(change.bytes, change.at)
      size = Math.max(size, change.at + change.bytes.length)
    } else {
      room.fill(0, change.size)
      size = change.size
    }
  }
  return room.subarray(0, size)
}

function renamed(names: Map<string, File>, change: NameChange): void {
  const file = 'file' in change ? change.file : names.get(change.name)
  if ('gone' in change) names.delete(change.name)
  else if ('file' in change) names.set(change.name, change.file)
  else if (file) {
    names.set(change.to, file)
    if (!change.keeps) names.delete(change.name)
  }
}

/** The disk before the recorded program began: all that is there is sure. */
export function diskBefore({ before }: Recording): Disk {
  const files = [...before].map(([name, bytes]): [string, File] => [
    name,
    { sure: Buffer.from(bytes), waiting: [] },
  ])
  return { files: new Map(files), sure: new Map(files), waiting: [] }
}

function fileOf(disk: Disk, name: string): File {
  const file = disk.files.get(name)
  if (!file) throw new Error(`the recording writes to ${name}, which it never made`)
  return file
}

function nameChange(event: DiskEvent): NameChange | undefined {
  if (event.kind === 'made') return { name: event.name, file: { sure: Buffer.alloc(0), waiting: [] } }
  if (event.kind === 'removed') return { name: event.name, gone: true }
  if (event.kind === 'renamed' || event.kind === 'linked')
    return { name: event.name, to: event.to, keeps: event.kind === 'linked' }
  return undefined
}

/** Lets one recorded event happen to the disk. */
export function happen(disk: Disk, event: DiskEvent): void {
  const names = nameChange(event)
  if (names) {
    renamed(disk.files, names)
    disk.waiting.push(names)
  } else if (event.kind === 'forced folder') {
    for (const change of disk.waiting) renamed(disk.sure, change)
    disk.waiting = []
  } else if (event.kind === 'wrote')
    fileOf(disk, event.name).waiting.push({ at: event.at, bytes: event.bytes })
  else if (event.kind === 'cut') fileOf(disk, event.name).waiting.push({ size: event.size })
  else if (event.kind === 'forced') {
    const file = fileOf(disk, event.name)
    file.sure = changed(file.sure, file.waiting)
    file.waiting = []
  }
}

/** A write as the sectors it touches, each its own change. */
function* sectorsOf(change: Change): Generator<Change> {
  if ('size' in change) return yield change
  const { at, bytes } = change
  for (let from = 0; from < bytes.length;) {
    const to = Math.min(bytes.length, from + sector - ((at + from) % sector))
    yield { at: at + from, bytes: bytes.subarray(from, to) }
    from = to
  }
}

const endOf = (changes: Change[], from: number): number =>
  changes.reduce(
    (end, change) => ('size' in change ? change.size : Math.max(end, change.at + change.bytes.length)),
    from,
  )

/** Those of a file's waiting changes that reach the disk after all. */
function surviving({ sure, waiting }: File, manner: Manner, chance: Chance): Change[] {
  const sectors = () => waiting.flatMap((change) => [...sectorsOf(change)]).filter(() => chance.next() < 0.5)
  const place = chance.below(waiting.length + 1)
  const torn = waiting.slice(place, place + 1).flatMap((change) => [...sectorsOf(change)])
  switch (manner) {
    case 'all of it lost':
      return []
    case 'all of it kept':
      return waiting
    case 'the first of it kept, the next torn':
      return [...waiting.slice(0, place), ...torn.slice(0, chance.below(torn.length + 1))]
    case 'the last of it kept alone':
      return waiting.slice(place)
    case 'any writes of it kept':
      return waiting.filter(() => chance.next() < 0.5)
    case 'any sectors of it kept':
      return sectors()
    case 'lengths kept, contents in part':
      return [{ size: endOf(waiting, sure.length) }, ...sectors().filter((change) => 'bytes' in change)]
  }
}

/**
 * What lies on the disk when the power is cut now. Names change in the order of the folder's journal, up to some point of it; a file's contents
 * that weren't forced may be there in any part and order, in whole sectors.
 */
export function afterCut(disk: Disk, manner: Manner, chance: Chance): Map<string, Uint8Array> {
  const names = new Map(disk.sure)
  const named =
    manner === 'all of it lost'
      ? 0
      : manner === 'all of it kept'
        ? disk.waiting.length
        : chance.below(disk.waiting.length + 1)
  for (const change of disk.waiting.slice(0, named)) renamed(names, change)
  const contents = new Map<File, Uint8Array>()
  for (const file of new Set(names.values()))
    contents.set(file, changed(file.sure, surviving(file, manner, chance)))
  return new Map([...names].map(([name, file]) => [name, contents.get(file) ?? Buffer.alloc(0)]))
}
