import type { Design } from '../shared/gate/designModel.ts'
import type { Drilling, Fitting } from '../shared/ironmongery/fitting.ts'
import { writeShortMm } from '../shared/units/writeLength.ts'

/** One drilling of a piece: how many of what, the drill to take, the ids of the worked size and depth ('' where it goes right through). */
export type DrillingRow = { words: string; size: string; sizeId: string; depth: string; depthId: string }

/** The hole for a bolt's rod: its size, and the ids of its worked size, place across ('' at the bolt's own height) and depth ('' where it isn't known). */
export type SocketRow = { size: string; sizeId: string; acrossId: string; depthId: string }

/** A piece where it goes: where in words, its height's figure, the strap wanted of a hinge, what to drill. */
export type FittingRow = {
  key: string
  name: string
  where: string
  heightId: string
  strapId: string
  part: string
  drillings: DrillingRow[]
  socket: SocketRow | null
}

const plural: Record<Drilling['what'], string> = {
  'screw hole': 'screw holes',
  'bolt hole': 'bolt holes',
  keyhole: 'keyhole, holes',
  'spindle hole': 'spindle holes',
  'latch hole': 'latch holes',
}

const idEnd = (what: Drilling['what']): string =>
  what.replace(/ (\w)/, (_, letter: string) => letter.toUpperCase())

function drillingRow(base: string, { what, count, size, depth }: Drilling): DrillingRow {
  return {
    words: `${count} ${count === 1 ? what : plural[what]},`,
    size: size.drill === null ? writeShortMm(size.exact, 1) : `drill ${writeShortMm(size.drill, 1)}`,
    sizeId: `${base}.${idEnd(what)}`,
    depth: depth === null ? '' : `${writeShortMm(depth)} deep`,
    depthId: depth === null ? '' : `${base}.screwDepth`,
  }
}

const where = ({ on, side, surface }: Fitting): string =>
  [on === '' ? `${side} side` : on, `on the ${surface}`].join(', ')

function socketRow(base: string, { socket, socketPlace }: Fitting): SocketRow | null {
  if (socket === null) return null
  return {
    size: writeShortMm(socket),
    sizeId: `${base}.socketHole`,
    acrossId: socketPlace && socketPlace.across !== null ? `${base}.socketAcross` : '',
    depthId: socketPlace ? `${base}.socketDepth` : '',
  }
}

/** Every piece of a leaf, in the order of the list, each with the figures that it was worked from. */
export const fittingRows = (design: Design, leaf: string): FittingRow[] =>
  design.fittings
    .filter((one) => one.leaf === leaf)
    .map((one, index) => {
      const heightId = one.figures.find((id) => id.endsWith('.height')) ?? ''
      const base = heightId.replace(/\.height$/, '')
      return {
        key: `${one.id} ${index}`,
        name: one.name,
        where: where(one),
        heightId,
        strapId: one.figures.find((id) => id.endsWith('.strapWanted')) ?? '',
        part: `${design.leaves.length > 1 ? `${leaf} ` : ''}${one.kind}`,
        drillings: one.drillings.map((drilling) => drillingRow(base, drilling)),
        socket: socketRow(base, one),
      }
    })
