import type { Point } from '../../geometry/point.ts'
import { mmOfPoint, type Measure, type PageMark } from '../page.ts'
import { clipLine } from './clipLine.ts'
import { templateBox, type Box, type SheetBody, type SheetRoom } from './sheetFrame.ts'
import { strokes, type Extent, type Template, type TemplateMark, type TemplateText } from './template.ts'

/** How much of a template two neighbouring sheets both show, mm: enough for a figure to stand whole on one of them. */
export const overlap = 20

/** A window on a template, and its neighbours at the right and above. */
export type Tile = { window: Extent; column: number; row: number }

/** How many windows of a size it takes to see a length, each overlapping the next. */
const count = (length: number, size: number): number =>
  length <= size ? 1 : Math.ceil((length - overlap) / (size - overlap))

/** The windows along one way, equally wide. */
function windows(from: number, to: number, size: number): [number, number][] {
  const n = count(to - from, size)
  const each = (to - from + (n - 1) * overlap) / n
  return Array.from({ length: n }, (_, i): [number, number] => {
    const start = from + i * (each - overlap)
    return [start, start + each]
  })
}

/** Windows on a template that fit a box, in rows from the foot up; those that its followed line doesn't cross are left out. */
export function tilesOf({ extent, followed }: Template, box: Pick<Box, 'width' | 'height'>): Tile[] {
  const columns = windows(extent.minX, extent.maxX, box.width)
  const rows = windows(extent.minY, extent.maxY, box.height)
  const all = rows.flatMap(([minY, maxY], row) =>
    columns.map(([minX, maxX], column) => ({ window: { minX, maxX, minY, maxY }, column, row })),
  )
  return followed ? all.filter(({ window }) => clipLine(followed, window).length > 0) : all
}

const weightOf = ({ weight = 'regular' }: TemplateText) => weight

/** The box that words take up, mm. */
function wordsBox(mark: TemplateText, measure: Measure): Extent {
  const long = measure(mark.text, mark.size, weightOf(mark))
  const high = mark.size * mmOfPoint * 0.75
  const back = { start: 0, middle: long / 2, end: long }[mark.anchor ?? 'start']
  const [x, y] = mark.at
  return mark.angle === 90
    ? { minX: x - high, maxX: x + 0.8, minY: y - back, maxY: y - back + long }
    : { minX: x - back, maxX: x - back + long, minY: y - 0.8, maxY: y + high }
}

const inside = (inner: Extent, outer: Extent): boolean =>
  inner.minX >= outer.minX && inner.maxX <= outer.maxX && inner.minY >= outer.minY && inner.maxY <= outer.maxY

/** Where a place of a template comes on its sheet. */
export type OnSheet = (at: Point) => Point

/** The marks of a template that a window shows, as they lie on its sheet. */
export function shownIn(
  marks: readonly TemplateMark[],
  window: Extent,
  onSheet: OnSheet,
  measure: Measure,
): PageMark[] {
  return marks.flatMap((mark): PageMark[] => {
    if (mark.kind === 'text') {
      if (!inside(wordsBox(mark, measure), window)) return []
      const [x, y] = onSheet(mark.at)
      const { text, size, anchor = 'start', angle } = mark
      return [
        {
          kind: 'text',
          x,
          y,
          text,
          size,
          weight: weightOf(mark),
          ink: 'black',
          anchor,
          ...(angle ? { angle } : {}),
        },
      ]
    }
    const { width, ink = 'black', dash, closed } = mark
    const look = { kind: 'path' as const, width, ink, ...(dash ? { dash } : {}) }
    const whole = mark.points.every(([x, y]) => inside({ minX: x, maxX: x, minY: y, maxY: y }, window))
    if (whole) return [{ ...look, points: mark.points.map(onSheet), closed: closed ?? false }]
    const [first] = mark.points
    const round = closed && first ? [...mark.points, first] : mark.points
    return clipLine(round, window).map((points) => ({ ...look, points: points.map(onSheet), closed: false }))
  })
}

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

/** The line along which two sheets meet, with its register marks. upright: the neighbour is at the side. */
function joint(window: Extent, upright: boolean, at: number): TemplateMark[] {
  const [from, to] = upright ? [window.minY, window.maxY] : [window.minX, window.maxX]
  const place = (along: number): Point => (upright ? [at, along] : [along, at])
  const inset = Math.min(14, (to - from) / 4)
  return [
    { kind: 'path', points: [place(from), place(to)], width: strokes.thin, dash: [6, 3] },
    ...[from + inset, to - inset].flatMap((along) => registerMark(place(along))),
  ]
}

function joints(tile: Tile, tiles: readonly Tile[]): TemplateMark[] {
  const { window, column, row } = tile
  const there = (right: number, up: number): number =>
    tiles.findIndex((other) => other.column === column + right && other.row === row + up)
  const say = (number: number, at: Point, anchor: 'start' | 'end'): TemplateMark => ({
    kind: 'text',
    at,
    text: `tile ${number + 1}`,
    size: 11,
    anchor,
  })
  const [left, right, below, above] = [there(-1, 0), there(1, 0), there(0, -1), there(0, 1)]
  const half = overlap / 2
  return [
    ...(left < 0
      ? []
      : [
          ...joint(window, true, window.minX + half),
          say(left, [window.minX + half + 1.5, window.minY + 1], 'start'),
        ]),
    ...(right < 0
      ? []
      : [
          ...joint(window, true, window.maxX - half),
          say(right, [window.maxX - half - 1.5, window.minY + 1], 'end'),
        ]),
    ...(below < 0
      ? []
      : [
          ...joint(window, false, window.minY + half),
          say(below, [window.maxX - 22, window.minY + half + 1.5], 'end'),
        ]),
    ...(above < 0
      ? []
      : [
          ...joint(window, false, window.maxY - half),
          say(above, [window.maxX - 22, window.maxY - half - 5], 'end'),
        ]),
  ]
}

const howToJoin =
  'Cut one sheet of each joint along the dashed line, lay it on the line of the other, crosses on crosses, and tape.'

/** A template on as many sheets as it takes: the sheets lying the way that takes fewer of them, upright where it makes no difference. */
export function tiled(template: Template, rooms: readonly SheetRoom[]): SheetBody[] {
  const ways = rooms.map((room) => {
    const whole = templateBox(room, template.lay)
    const fits = tilesOf(template, whole).length === 1
    const lay = fits ? template.lay : [...template.lay, howToJoin]
    const box = fits ? whole : templateBox(room, lay)
    return { room, lay, box, tiles: tilesOf(template, box) }
  })
  const [best] = [...ways].sort((a, b) => a.tiles.length - b.tiles.length)
  if (!best) throw new RangeError('a template needs a sheet to lie on')
  const { room, lay, box, tiles } = best
  return tiles.map((tile, i) => {
    const { window } = tile
    const left = box.x + (box.width - (window.maxX - window.minX)) / 2
    const top = box.y + (tiles.length > 1 ? 0 : Math.min(12, (box.height - (window.maxY - window.minY)) / 2))
    const onSheet: OnSheet = ([x, y]) => [left + x - window.minX, top + window.maxY - y]
    const marks = shownIn([...template.marks, ...joints(tile, tiles)], window, onSheet, room.measure)
    return { room, title: template.title, lay, tile: i + 1, tiles: tiles.length, marks }
  })
}
