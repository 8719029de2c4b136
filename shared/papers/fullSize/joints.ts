import type { Point } from '../../geometry/point.ts'
import { strokes, type TemplateMark } from './template.ts'
import { overlap, type Tile } from './views.ts'

/** Half the size of a register mark's cross, mm. */
const arm = 4

/** A register mark: a cross and a small square about its middle, the same on both sheets that meet there. */
export function registerMark([x, y]: Point): TemplateMark[] {
  const line = (points: Point[], closed?: true): TemplateMark => ({
    kind: 'path',
    points,
    width: strokes.thin,
    ...(closed ? { closed } : {}),
  })
  const half = 1.6
  return [
    line([
      [x - arm, y],
      [x + arm, y],
    ]),
    line([
      [x, y - arm],
      [x, y + arm],
    ]),
    line(
      [
        [x - half, y - half],
        [x + half, y - half],
        [x + half, y + half],
        [x - half, y + half],
      ],
      true,
    ),
  ]
}

/** The line along which two sheets meet, as far as both show it, with its register marks. upright: the neighbour is at the side. */
function joint(
  { view }: Tile,
  neighbour: Tile,
  { upright, at }: { upright: boolean; at: number },
): TemplateMark[] {
  const other = neighbour.view
  const [from, to] = upright
    ? [Math.max(view.minY, other.minY), Math.min(view.maxY, other.maxY)]
    : [Math.max(view.minX, other.minX), Math.min(view.maxX, other.maxX)]
  const place = (along: number): Point => (upright ? [at, along] : [along, at])
  const inset = Math.min(14, (to - from) / 4)
  return [
    { kind: 'path', points: [place(from), place(to)], width: strokes.thin, dash: [6, 3] },
    ...[from + inset, to - inset].flatMap((along) => registerMark(place(along))),
  ]
}

const joinWords = (number: number, at: Point, anchor: 'start' | 'end'): TemplateMark => ({
  kind: 'text',
  at,
  text: `tile ${number + 1}`,
  size: 11,
  anchor,
})

/** Every joint of a tile with its neighbours, and which tile comes there. */
export function joints(tile: Tile, tiles: readonly Tile[]): TemplateMark[] {
  const { view, column, row } = tile
  const half = overlap / 2
  const { minX, maxX, minY, maxY } = view
  const sides = [
    { to: [-1, 0], upright: true, at: minX + half, words: [minX + half + 1.5, minY + 2], anchor: 'start' },
    { to: [1, 0], upright: true, at: maxX - half, words: [maxX - half - 1.5, minY + 2], anchor: 'end' },
    { to: [0, -1], upright: false, at: minY + half, words: [maxX - 22, minY + half + 1.5], anchor: 'end' },
    { to: [0, 1], upright: false, at: maxY - half, words: [maxX - 22, maxY - half - 5], anchor: 'end' },
  ] as const
  return sides.flatMap(({ to: [right, up], upright, at, words, anchor }) => {
    const number = tiles.findIndex((other) => other.column === column + right && other.row === row + up)
    const neighbour = tiles[number]
    return neighbour ? [...joint(tile, neighbour, { upright, at }), joinWords(number, words, anchor)] : []
  })
}
