import type { FixingPlaces } from './fixingWords.ts'

/** How a view that page 1 has no room for is shown: 'beside' the lists, across the page on its 'own', or not at all. */
export type Shown = 'beside' | 'own' | 'left out'

/**
 * How full a card is. faceHeight in mm; places: how the fixings' places are written; mostGuided: how many guided saws get their
 * lines; coarser: how many steps smaller than it could be the back is drawn, to leave room under it.
 */
export type CardChoice = {
  face: Shown
  section: Shown
  faceHeight: number
  places: FixingPlaces
  mostGuided: number
  coarser: number
}

const full: CardChoice = {
  face: 'beside',
  section: 'own',
  faceHeight: 136,
  places: 'all',
  mostGuided: 3,
  coarser: 0,
}
const withoutFace: CardChoice = { ...full, face: 'left out' }
const bare: CardChoice = { ...withoutFace, section: 'left out', places: 'counted', mostGuided: 1 }

/**
 * How full a card may be, the fullest first. Only what stands elsewhere as well gives way: the face, whose boards are listed; the
 * places of fixings, which the drawing shows; then the section; last of all the back is drawn smaller.
 */
export const choices: CardChoice[] = [
  full,
  { ...full, section: 'beside' },
  { ...full, section: 'beside', faceHeight: 120 },
  { ...full, section: 'beside', faceHeight: 120, places: 'on ledges' },
  withoutFace,
  { ...withoutFace, section: 'beside' },
  { ...withoutFace, section: 'beside', places: 'on ledges' },
  { ...withoutFace, section: 'beside', places: 'counted', mostGuided: 2 },
  { ...withoutFace, section: 'left out', places: 'on ledges' },
  bare,
  { ...bare, coarser: 1 },
  { ...bare, coarser: 2 },
  { ...bare, coarser: 4 },
]
