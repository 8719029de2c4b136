/** How a piece of ironmongery is finished, which tells what timber it may stand in. */
export type Finish = 'black japanned' | 'galvanised' | 'stainless'

/** Holes for the screws of one piece: how many, how wide in the metal, and how far apart, mm. A hinge's are those in its strap. */
export type ScrewHoles = { count: number; diameter: number; spacing: number }

/** What every piece has. massKg is of one piece with its keep or post plate; suits says which hand of gate it can go on. */
type Piece = {
  id: string
  name: string
  finish: Finish
  massKg: number
  screws: ScrewHoles
  suits: 'either hand' | 'left' | 'right'
}

/**
 * A strap hinge for one ledge line. strapLength from pin to tip; band the strap's width and thickness; pin the diameter it turns on;
 * plate what goes on the post; bolt the coach bolts through strap and leaf beside the screws, or null; maxLeafMassKg the leaf that
 * a pair carries, as a maker would give it. mm and kg.
 */
export type HingeEntry = Piece & {
  kind: 'hinge'
  form: 'tee' | 'hook and band'
  strapLength: number
  band: { width: number; thickness: number }
  pin: number
  plate: { width: number; height: number }
  bolt: { diameter: number; count: number } | null
  maxLeafMassKg: number
}

/**
 * A latch. plate is what lies on the leaf; spindle the hole through it for ring or thumb bar; bar what moves on
 * the back; thickestLeaf what it reaches through, mm.
 */
export type LatchEntry = Piece & {
  kind: 'latch'
  plate: { width: number; height: number }
  spindle: number
  bar: { width: number; height: number }
  thickestLeaf: number
}

/** A lock let on to the back. backset is from its edge of the leaf to the keyhole's middle; spindle null where it has no handles. mm. */
export type LockEntry = Piece & {
  kind: 'lock'
  plate: { width: number; height: number; depth: number }
  backset: number
  keyhole: { drill: number; length: number }
  spindle: number | null
}

/** A bolt. length is the rod's, throw what it shoots, socket the hole it drops or shoots into. mm. */
export type BoltEntry = Piece & {
  kind: 'bolt'
  form: 'drop' | 'top' | 'barrel'
  length: number
  rod: number
  throw: number
  plateWidth: number
  socket: number
}

/** A handle. grip is its length over all, upright; plateWidth across. mm. */
export type HandleEntry = Piece & { kind: 'handle'; grip: number; plateWidth: number }

export type CatalogueEntry = HingeEntry | LatchEntry | LockEntry | BoltEntry | HandleEntry

/** One list of sizes in each of several finishes: 'tee-450' becomes 'tee-450-galvanised', 'Yard tee hinge 450, galvanised'. */
export const inFinishes = <R extends { id: string; name: string }>(
  rows: readonly R[],
  finishes: readonly Finish[],
): (R & { finish: Finish })[] =>
  rows.flatMap((row) =>
    finishes.map((finish) => ({
      ...row,
      id: `${row.id}-${finish.replace(' ', '-')}`,
      name: `${row.name}, ${finish}`,
      finish,
    })),
  )
