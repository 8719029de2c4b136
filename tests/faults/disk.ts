import {
  applied,
  emptyFolder,
  forcedWith,
  isFolder,
  keptOf,
  type Folder,
  type NameChange,
  type Node,
} from './folders.ts'
import type { Chance } from './seeded.ts'
import type { DiskEvent, Recording } from './recording.ts'

/** What a disk writes whole or not at all, bytes. */
const sector = 512

type Change = { at: number; bytes: Uint8Array } | { size: number }

/** A file's contents that are surely on the disk, and what was changed since it was last forced there. */
export type File = { sure: Buffer; waiting: Change[] }

/** A folder with all in it, and the changes of names that no folder was forced to the disk after, in order. */
export type Disk = { top: Folder<File>; waiting: NameChange<File>[] }

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

const partsOf = (name: string): string[] => (name === '' ? [] : name.split('/'))

function folderAt({ top }: Disk, name: string): Folder<File> {
  let folder = top
  for (const part of partsOf(name)) {
    const next = folder.names.get(part)
    if (!isFolder(next)) throw new Error(`the recording goes to ${name}, which is no folder`)
    folder = next
  }
  return folder
}

/** Where a name stands: its folder, its own last part, and what it leads to. */
function placeOf(disk: Disk, name: string): { folder: Folder<File>; name: string; node?: Node<File> } {
  const last = name.lastIndexOf('/')
  const folder = folderAt(disk, last < 0 ? '' : name.slice(0, last))
  const own = name.slice(last + 1)
  const node = folder.names.get(own)
  return { folder, name: own, ...(node && { node }) }
}

/** The disk before the recorded program began: all that is there is sure. */
export function diskBefore({ before, folders }: Recording): Disk {
  const disk: Disk = { top: emptyFolder(), waiting: [] }
  const stand = (name: string, node: Node<File>): void => {
    const place = placeOf(disk, name)
    for (const view of [place.folder.names, place.folder.sure]) view.set(place.name, node)
  }
  for (const name of folders) stand(name, emptyFolder())
  for (const [name, bytes] of before) stand(name, { sure: Buffer.from(bytes), waiting: [] })
  return disk
}

function fileOf(disk: Disk, name: string): File {
  const { node } = placeOf(disk, name)
  if (!node || isFolder(node)) throw new Error(`the recording writes to ${name}, which it never made`)
  return node
}

function nameChange(disk: Disk, event: DiskEvent): NameChange<File> | undefined {
  if (event.kind === 'made')
    return [{ ...placeOf(disk, event.name), node: { sure: Buffer.alloc(0), waiting: [] } }]
  if (event.kind === 'made folder') return [{ ...placeOf(disk, event.name), node: emptyFolder() }]
  if (event.kind === 'removed') return [{ ...placeOf(disk, event.name), node: undefined }]
  if (event.kind !== 'renamed' && event.kind !== 'linked') return undefined
  const [from, to] = [placeOf(disk, event.name), placeOf(disk, event.to)]
  if (!from.node) throw new Error(`the recording names ${event.name}, which it never made`)
  // A second name for the same file over the first changes nothing.
  if (from.node === to.node) return undefined
  const gone = { ...from, node: undefined }
  return [...(event.kind === 'renamed' ? [gone] : []), { ...to, node: from.node }]
}

function forceFolder(disk: Disk, name: string): void {
  const { forced, rest } = forcedWith(folderAt(disk, name), disk.waiting)
  for (const change of forced) applied(change, ({ sure }) => sure)
  disk.waiting = rest
}

/** Lets one recorded event happen to the disk. */
export function happen(disk: Disk, event: DiskEvent): void {
  const names = nameChange(disk, event)
  if (names) {
    applied(names, (folder) => folder.names)
    disk.waiting.push(names)
  } else if (event.kind === 'forced folder') forceFolder(disk, event.name)
  else if (event.kind === 'wrote') fileOf(disk, event.name).waiting.push({ at: event.at, bytes: event.bytes })
  else if (event.kind === 'copied') {
    const from = fileOf(disk, event.from)
    const bytes = changed(from.sure, from.waiting).subarray(event.fromAt, event.fromAt + event.count)
    fileOf(disk, event.name).waiting.push({ at: event.at, bytes })
  } else if (event.kind === 'cut') fileOf(disk, event.name).waiting.push({ size: event.size })
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

/** What a power cut left: every name with its file's contents, undefined for a folder, a folder before what is in it. Two names of one file give the same contents. */
export type Left = [name: string, contents: Uint8Array | undefined][]

/**
 * What lies on the disk when the power is cut now. Names change in the order of each folder's journal, up to some point of it; a file's contents
 * that weren't forced may be there in any part and order, in whole sectors.
 */
export function afterCut(disk: Disk, manner: Manner, chance: Chance): Left {
  const keeps = (own: number): number =>
    manner === 'all of it lost' ? 0 : manner === 'all of it kept' ? own : chance.below(own + 1)
  const views = new Map<Folder<File>, Map<string, Node<File>>>()
  const viewOf = (folder: Folder<File>): Map<string, Node<File>> => {
    const view = views.get(folder) ?? new Map(folder.sure)
    views.set(folder, view)
    return view
  }
  for (const change of keptOf(disk.waiting, keeps)) applied(change, viewOf)
  const contents = new Map<File, Uint8Array>()
  const left = (folder: Folder<File>, within: string): Left =>
    [...viewOf(folder)].flatMap(([own, node]): Left => {
      const name = within + own
      if (isFolder(node)) return [[name, undefined], ...left(node, `${name}/`)]
      const bytes = contents.get(node) ?? changed(node.sure, surviving(node, manner, chance))
      contents.set(node, bytes)
      return [[name, bytes]]
    })
  return left(disk.top, '')
}
