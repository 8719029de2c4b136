import type { GateSpec, Ironmongery } from '../gate/spec.ts'
import { entryOf } from './catalogue.ts'
import type { BoltEntry, HingeEntry } from './entry.ts'

/** How wide and high a piece lies on the leaf, mm. */
export type Box = { width: number; height: number }

/** Sizes taken for a piece that the list of ironmongery doesn't hold, mm: typical of the trade, common practice. */
const typical = { latch: [50, 230], lock: [100, 75], handle: [35, 150], other: [60, 60] } as const

/** What form a bolt has: as listed, else by what it is called. */
export function boltForm({ id, name }: Pick<Ironmongery, 'id' | 'name'>): BoltEntry['form'] {
  const listed = entryOf(id, 'bolt')
  if (listed) return listed.form
  if (/\b(drop|cane|foot|monkey)/i.test(name)) return 'drop'
  return /\b(top|tower|head)/i.test(name) ? 'top' : 'barrel'
}

function boltBox(piece: Ironmongery): Box {
  const { length, plateWidth: plate } = entryOf(piece.id, 'bolt') ?? { length: 200, plateWidth: 45 }
  return boltForm(piece) === 'barrel' ? { width: length, height: plate } : { width: plate, height: length }
}

/** The room a latch, lock, bolt, handle or other piece takes up on the leaf. A hinge's is its strap. */
export function boxOf(piece: Ironmongery): Box {
  if (piece.kind === 'bolt') return boltBox(piece)
  if (piece.kind === 'hinge') {
    const { strapLength, band } = strapOf(piece)
    return { width: strapLength, height: band.width }
  }
  if (piece.kind === 'handle') {
    const handle = entryOf(piece.id, 'handle')
    if (handle) return { width: handle.plateWidth, height: handle.grip }
  }
  const listed = entryOf(piece.id, 'latch') ?? entryOf(piece.id, 'lock')
  if (listed) return { width: listed.plate.width, height: listed.plate.height }
  const [width, height] = typical[piece.kind]
  return { width, height }
}

/** The side of the leaf that a piece lies on: locks and bolts on the back, latches on the face, hinges and handles where it opens to. */
export function surfaceOf(spec: GateSpec, kind: Ironmongery['kind']): 'face' | 'back' {
  if (kind === 'lock' || kind === 'bolt') return 'back'
  if (kind === 'latch') return 'face'
  return spec.opens === 'to-face' ? 'face' : 'back'
}

/** What a piece takes up on the back, where the braces are: itself, a latch's bar, or null for one that is all on the face. */
export function backBoxOf(spec: GateSpec, piece: Ironmongery): Box | null {
  if (piece.kind === 'latch') return entryOf(piece.id, 'latch')?.bar ?? { width: 190, height: 30 }
  return surfaceOf(spec, piece.kind) === 'back' ? boxOf(piece) : null
}

/** A hinge's strap and post plate: as listed, with the strap length that the spec gives before the list's. mm. */
export type Strap = Pick<HingeEntry, 'form' | 'strapLength' | 'band' | 'plate' | 'pin' | 'bolt'>

const typicalStrap: Strap = {
  form: 'tee',
  strapLength: 450,
  band: { width: 45, thickness: 3.5 },
  plate: { width: 45, height: 180 },
  pin: 10,
  bolt: null,
}

/** The strap of a hinge, listed or not. Without any length 450 is taken, the trade's 18 in. */
export function strapOf(piece: Pick<Ironmongery, 'id' | 'strapLength' | 'name'>): Strap {
  const listed = entryOf(piece.id, 'hinge')
  const strap: Strap = listed ?? {
    ...typicalStrap,
    ...(/band|hook/i.test(piece.name) ? { form: 'hook and band' as const } : {}),
  }
  return { ...strap, strapLength: piece.strapLength ?? strap.strapLength }
}

/** The thickness a latch must reach through, mm: boards and ledge, which is also a frame's. */
export const leafThickness = (spec: GateSpec): number =>
  spec.boards.section.thickness + spec.ledges.section.thickness
