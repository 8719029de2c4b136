import type { PageMark } from '../page.ts'
import { joints } from './joints.ts'
import { templateBox, type Box, type SheetBody, type SheetRoom } from './sheetFrame.ts'
import { shownIn, type OnSheet } from './shownIn.ts'
import type { Template, TemplateMark } from './template.ts'
import { tilesOf, type Tile } from './views.ts'

const howToJoin =
  'Cut the tiles out; cut one of each joint along the dashed line, lay it on the line of the other, crosses on crosses, and tape.'

/** Room over each of several tiles for its name, and between two of them, mm. */
const nameRoom = 6.5

const highOf = ({ view }: Tile): number => view.maxY - view.minY

/** Tiles put on sheets in their order, one under another while there is room. */
function stacked(tiles: readonly Tile[], high: number): Tile[][] {
  const sheets: Tile[][] = []
  let left = 0
  for (const tile of tiles) {
    const own = highOf(tile) + (tiles.length > 1 ? nameRoom : 0)
    const sheet = sheets.at(-1)
    if (sheet && own <= left) sheet.push(tile)
    else {
      sheets.push([tile])
      left = high
    }
    left -= own
  }
  return sheets
}

/** One way of printing a template: on which sheets, with what words, in which tiles. */
type Way = { room: SheetRoom; lay: string[]; box: Box; tiles: Tile[]; sheets: Tile[][] }

function wayOn(template: Template, room: SheetRoom): Way {
  const whole = templateBox(room, template.lay)
  const fits = tilesOf(template, whole).length === 1
  const lay = fits ? template.lay : [...template.lay, howToJoin]
  const box = templateBox(room, lay)
  const tiles = tilesOf(template, { width: box.width, height: box.height - (fits ? 0 : nameRoom) })
  return { room, lay, box, tiles, sheets: stacked(tiles, box.height) }
}

/** Nearer to a joint than this, words that are said beside as well give way to it, mm. */
const clearOfJoint = 21

const givesWay = (mark: TemplateMark, meeting: readonly TemplateMark[]): boolean =>
  mark.kind === 'text' &&
  mark.spare === true &&
  meeting.some((joint) => joint.kind === 'text' && Math.abs(joint.at[0] - mark.at[0]) < clearOfJoint)

/** A tile's marks on its sheet, its upper edge at top; one of several has its name over it. */
function tileMarks(template: Template, { tile, top }: { tile: Tile; top: number }, way: Way): PageMark[] {
  const { room, box, tiles } = way
  const { view } = tile
  const left = box.x + (box.width - (view.maxX - view.minX)) / 2
  const down = tiles.length > 1 ? nameRoom : 0
  const onSheet: OnSheet = ([x, y]) => [left + x - view.minX, top + down + view.maxY - y]
  const meeting = joints(tile, tiles)
  const own = template.marks.filter((mark) => !givesWay(mark, meeting))
  const marks = shownIn([...own, ...meeting], { view, onSheet }, room.measure)
  if (tiles.length === 1) return marks
  const name = `tile ${tiles.indexOf(tile) + 1} of ${tiles.length}`
  return [
    {
      kind: 'text',
      x: left,
      y: top + 4.6,
      text: name,
      size: 11,
      weight: 'semibold',
      ink: 'black',
      anchor: 'start',
    },
    ...marks,
  ]
}

/** 'tile 3 of 5', 'tiles 3 and 4 of 5', 'tiles 1 to 3 of 5'; nothing for a template in one piece. */
export function tileWords(first: number, last: number, all: number): string {
  if (all === 1) return ''
  if (first === last) return `tile ${first} of ${all}`
  return `tiles ${first} ${last === first + 1 ? 'and' : 'to'} ${last} of ${all}`
}

/** A template on as few sheets as it takes, the sheets lying upright where it makes no difference. */
export function tiled(template: Template, rooms: readonly SheetRoom[]): SheetBody[] {
  const ways = rooms.map((room) => wayOn(template, room))
  const [best] = [...ways].sort(
    (a, b) => a.sheets.length - b.sheets.length || a.tiles.length - b.tiles.length,
  )
  if (!best) throw new RangeError('a template needs a sheet to lie on')
  const { room, lay, box, tiles, sheets } = best
  return sheets.map((sheet) => {
    let top = box.y + (tiles.length > 1 ? 0 : Math.min(12, (box.height - highOf(sheet[0] as Tile)) / 2))
    const marks = sheet.flatMap((tile) => {
      const made = tileMarks(template, { tile, top }, best)
      top += highOf(tile) + nameRoom
      return made
    })
    const [first, last] = [sheet[0], sheet.at(-1)].map((tile) => tiles.indexOf(tile as Tile) + 1)
    return { room, title: template.title, lay, tile: tileWords(first ?? 1, last ?? 1, tiles.length), marks }
  })
}
