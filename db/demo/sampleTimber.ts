import type { Ironmongery, Section } from '../../shared/gate/spec.ts'

// Sections of the made-up workshop: sizes are common practice.
export const larchBoards: Section = {
  name: 'ex 25 × 125 T&G V larch',
  species: 'European larch',
  thickness: 20,
  width: 112,
  tongue: 7,
  groove: 8,
}
export const thinBoards: Section = {
  name: 'ex 19 × 125 T&G V',
  species: 'European redwood',
  thickness: 14.5,
  width: 112,
  tongue: 7,
  groove: 8,
}
export const narrowBoards: Section = {
  name: 'ex 25 × 100 T&G V',
  species: 'European redwood',
  thickness: 20,
  width: 88,
  tongue: 7,
  groove: 8,
}
export const wideBoards: Section = {
  name: 'ex 25 × 150 T&G V',
  species: 'European redwood',
  thickness: 20,
  width: 137,
  tongue: 7,
  groove: 8,
}
export const oakBoards: Section = {
  name: 'ex 32 × 125 T&G V oak',
  species: 'European oak',
  thickness: 27,
  width: 112,
  tongue: 8,
  groove: 9,
}
export const stoutLedges: Section = {
  name: 'ex 38 × 150 planed',
  species: 'European redwood',
  thickness: 33,
  width: 145,
}
export const narrowLedges: Section = {
  name: 'ex 32 × 100 planed',
  species: 'European redwood',
  thickness: 28,
  width: 95,
}
export const oakLedges: Section = {
  name: 'ex 38 × 150 planed oak',
  species: 'European oak',
  thickness: 33,
  width: 145,
}
export const stoutBraces: Section = {
  name: 'ex 38 × 100 planed',
  species: 'European redwood',
  thickness: 33,
  width: 95,
}
export const oakBraces: Section = {
  name: 'ex 38 × 100 planed oak',
  species: 'European oak',
  thickness: 33,
  width: 95,
}

/** A pair of strap hinges of one length, mm, and the mass of each, kg. */
export const strapHinges = (length: number, massKg: number): Ironmongery => ({
  id: 'strap-hinges',
  kind: 'hinge',
  name: `strap hinge ${length} mm with hook`,
  quantity: 2,
  massKg,
  strapLength: length,
  side: 'hanging',
})
export const thumbLatch: Ironmongery = {
  id: 'thumb-latch',
  kind: 'latch',
  name: 'thumb latch',
  quantity: 1,
  massKg: 0.6,
  side: 'closing',
}
