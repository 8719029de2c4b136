import { entryOf } from '../ironmongery/catalogue.ts'
import type { CatalogueEntry, Finish } from '../ironmongery/entry.ts'
import type { Ironmongery } from '../gate/spec.ts'
import { counted } from './countWords.ts'
import type { SizeWords } from './sizeWords.ts'

const kinds: Record<Exclude<Ironmongery['kind'], 'other'>, [one: string, several: string]> = {
  hinge: ['hinge', 'hinges'],
  latch: ['latch', 'latches'],
  lock: ['lock', 'locks'],
  bolt: ['bolt', 'bolts'],
  handle: ['handle', 'handles'],
}

/** A piece's entry in the list, as long as the workshop hasn't given it a name of its own. */
function listedEntry({ id, kind, name }: Ironmongery): CatalogueEntry | undefined {
  const entry = kind === 'other' ? undefined : entryOf(id, kind)
  return entry?.name === name ? entry : undefined
}

/** The finish that every piece has, undefined where they differ or one is the workshop's own. */
export function commonFinish(pieces: readonly Ironmongery[]): Finish | undefined {
  const all = new Set(pieces.map((piece) => listedEntry(piece)?.finish))
  return all.size === 1 ? [...all][0] : undefined
}

/** What a listed piece is, from its id: 'thumb-latch-230-galvanised' is a thumb latch. */
function listedKind(entry: CatalogueEntry): string {
  if (entry.kind === 'hinge') return entry.form === 'tee' ? 'tee hinge' : 'hook-and-band hinge'
  return entry.id.replace(/-\d.*$/, '').replace(/-/g, ' ')
}

/** A piece's size where it matters to a customer: a hinge's straps, a bolt's rod, a handle's grip. */
function sizeOf(entry: CatalogueEntry, sizes: SizeWords): string {
  if (entry.kind === 'hinge') return ` with straps ${sizes.length(entry.strapLength)} long`
  if (entry.kind === 'bolt') return ` ${sizes.length(entry.length)} long`
  return entry.kind === 'handle' ? ` ${sizes.length(entry.grip)} long` : ''
}

/** One entry of a gate's ironmongery as it is said: 'two tee hinges with straps 600 mm (…) long', 'a latch (the workshop's own name)'. */
export function pieceWords(piece: Ironmongery, sizes: SizeWords, withFinish: boolean): string {
  const entry = listedEntry(piece)
  if (entry) {
    const what = withFinish ? `${entry.finish} ${listedKind(entry)}` : listedKind(entry)
    const several = what.endsWith('latch') ? `${what}es` : `${what}s`
    return `${counted(piece.quantity, what, several)}${sizeOf(entry, sizes)}`
  }
  if (piece.kind === 'other') return piece.quantity === 1 ? piece.name : `${piece.quantity} × ${piece.name}`
  const [one, several] = kinds[piece.kind]
  const own = piece.name.trim()
  return `${counted(piece.quantity, one, several)}${own === '' ? '' : ` (${own})`}`
}
