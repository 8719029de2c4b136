import type { FigureText } from '../../drawing/figureText.ts'
import type { Design } from '../../gate/designModel.ts'
import type { GateSpec } from '../../gate/spec.ts'
import type { Point } from '../../geometry/point.ts'
import type { Measure, PageMark } from '../page.ts'
import { lineHeight, setLines, type SetLine } from '../words.ts'
import { rodsOf, type Rod, type RodHeight } from './rodHeights.ts'
import { templateBox, type SheetBody, type SheetRoom } from './sheetFrame.ts'
import { registerMark } from './joints.ts'
import { shownIn, type OnSheet } from './shownIn.ts'
import { spread } from './spread.ts'
import { strokes, stroke, words, type Extent, type TemplateMark } from './template.ts'

/** One strip of a rod, mm: its width, the gap beside it, what it shares with the next, how much of it the marks take and where its words begin. */
export const strip = { width: 41, gap: 3, shared: 15, marks: 12, words: 14.5 }

/** Room at a strip's lower end for its number, mm. */
const numberRoom = 8

/** From one height of the rod to another, mm. */
type Stretch = { from: number; to: number }

/** A strip before it lies on a sheet: which of how many, and the stretch of the rod that it shows. */
type Strip = Stretch & { number: number; of: number }

/** A rod cut into strips of a length at most, equally long. */
function stripsOf({ heights }: Rod, most: number): Strip[] {
  const [low, high] = [(heights[0]?.y ?? 0) - numberRoom - 6, (heights.at(-1)?.y ?? 0) + 8]
  const of = Math.max(1, Math.ceil((high - low - strip.shared) / (most - strip.shared)))
  const each = (high - low + (of - 1) * strip.shared) / of
  return Array.from({ length: of }, (_, i) => {
    const from = low + i * (each - strip.shared)
    return { number: i + 1, of, from, to: from + each }
  })
}

type Label = { y: number; figure: string; lines: SetLine[]; room: number }

function labelOf({ y, names }: RodHeight, { write }: FigureText, measure: Measure): Label {
  const width = strip.width - strip.words - 1
  const lines = names.flatMap((name) =>
    setLines([{ text: name, weight: 'regular' }], { width, size: 11, measure }),
  )
  return { y, figure: write(y), lines, room: lineHeight(14) + lines.length * lineHeight(11) + 1 }
}

/** A height: a strong line from the working edge, led to its figure and name. */
function heightMarks({ y, figure, lines }: Label, place: number, room: number): TemplateMark[] {
  const base = place + room / 2 - lineHeight(14) + 0.8
  const lead = base + 1.6
  return [
    stroke(
      [
        [0, y],
        [strip.marks, y],
      ],
      strokes.clear,
    ),
    stroke(
      [
        [strip.marks, y],
        [strip.words - 0.6, lead],
      ],
      strokes.thin,
    ),
    words(figure, [strip.words, base], { size: 14, weight: 'semibold' }),
    ...lines.flatMap((line, i) =>
      line.map((run) => words(run.text, [strip.words + run.x, base - (i + 1) * lineHeight(11) + 0.4])),
    ),
  ]
}

/** Where two strips meet: the upper one begins at the dashed line and lies over what is above it, cross on cross. */
function meeting(at: number, number: number, upper: boolean): TemplateMark[] {
  const cross = registerMark([strip.marks / 2, at + strip.shared / 2])
  if (upper) return cross
  return [
    ...cross,
    stroke(
      [
        [0, at],
        [strip.width, at],
      ],
      strokes.thin,
      { dash: [3, 2] },
    ),
    words(`strip ${number} from`, [strip.words, at + 7.5]),
    words('this line up', [strip.words, at + 2.5]),
  ]
}

/** How a rod's figures are written and measured. */
type Written = { figures: FigureText; measure: Measure }

/** Room left under the line at which the next strip begins, mm. */
const underLine = 2

/** The heights that a strip says: those in what it shares with the next are said there. */
function saidOn(rod: Rod, { from, to }: Stretch, { figures, measure }: Written): TemplateMark[] {
  const labels = rod.heights
    .filter(({ y }) => y >= from && y < to)
    .map((height) => labelOf(height, figures, measure))
  const places = spread(
    labels.map(({ y, room }) => ({ at: y, room })),
    from + numberRoom,
    to - underLine,
  )
  return labels.flatMap((label, i) => heightMarks(label, places[i] ?? label.y, label.room))
}

const upright = (x: number, { from, to }: Stretch): Point[] => [
  [x, from],
  [x, to],
]

/** A strip's outline, its working edge heavy. */
const outline = ({ from, to }: Stretch): TemplateMark[] => [
  stroke(
    [
      [0, from],
      [strip.width, from],
      [strip.width, to],
      [0, to],
    ],
    strokes.thin,
  ),
  stroke(upright(0, { from, to }), strokes.strong),
]

function stripMarks(rod: Rod, own: Strip, written: Written): TemplateMark[] {
  const { number, of, from, to } = own
  const last = number === of
  const end = last ? to : to - strip.shared
  const beyond = rod.heights.filter(({ y }) => y >= end && y <= to)
  return [
    ...rod.bands.map((band) => stroke(upright(strip.marks - 4, band), strokes.clear)),
    ...outline({ from, to }),
    ...saidOn(rod, { from, to: end }, written),
    ...beyond.map(({ y }) =>
      stroke(
        [
          [0, y],
          [strip.marks, y],
        ],
        strokes.clear,
      ),
    ),
    words(of === 1 ? 'rod' : `strip ${number}`, [strip.words, from + 2], { weight: 'semibold' }),
    ...(number > 1 ? meeting(from, number, true) : []),
    ...(last ? [] : meeting(end, number + 1, false)),
  ]
}

/** What a rod is for, how it is put together and what to check it by. */
function sayings({ leaf, heights }: Rod, strips: number, { write }: FigureText): string[] {
  const whole = write((heights.at(-1)?.y ?? 0) - (heights[0]?.y ?? 0))
  const whose = { leaf: '', 'both leaves': ' of both leaves' }[leaf] ?? ` of the ${leaf}`
  const joined =
    strips > 1
      ? `Cut out ${strips} strips, lay each over the one before from its dashed line up, cross on cross, and tape. `
      : ''
  return [
    `Every height${whose} from the foot, ${whole} in all. ${joined}Tape the rod to a straight batten, heavy edge outwards; check its whole length with a tape.`,
  ]
}

/** 'strips 5 to 8 of 9'; nothing for a rod in one piece. */
const stripWords = (first: number, last: number, all: number): string =>
  all === 1 ? '' : first === last ? `strip ${first} of ${all}` : `strips ${first} to ${last} of ${all}`

/** Strips side by side on upright sheets: four stand on one, where a sheet lying across would hold only three. */
function rodBodies(rod: Rod, room: SheetRoom, figures: FigureText): SheetBody[] {
  const lay = sayings(rod, 9, figures)
  const box = templateBox(room, lay)
  const strips = stripsOf(rod, box.height)
  const across = Math.max(1, Math.floor((box.width + strip.gap) / (strip.width + strip.gap)))
  const sheets = Math.ceil(strips.length / across)
  return Array.from({ length: sheets }, (_, sheet) => {
    const marks = strips.slice(sheet * across, (sheet + 1) * across).flatMap((own, i): PageMark[] => {
      const left = box.x + 0.5 + i * (strip.width + strip.gap)
      const view: Extent = { minX: 0, maxX: strip.width, minY: own.from, maxY: own.to }
      const onSheet: OnSheet = ([x, y]) => [left + x, box.y + own.to - y]
      return shownIn(
        stripMarks(rod, own, { figures, measure: room.measure }),
        { view, onSheet },
        room.measure,
      )
    })
    const title = rod.leaf === 'leaf' ? 'Setting-out rod' : `Setting-out rod, ${rod.leaf}`
    return {
      room,
      title,
      lay: sayings(rod, strips.length, figures),
      tile: stripWords(sheet * across + 1, Math.min(strips.length, (sheet + 1) * across), strips.length),
      marks,
    }
  })
}

/** The sheets a rod is printed on, and how its figures are written. */
type RodOn = { room: SheetRoom; figures: FigureText }

/** The setting-out rods of a gate: a strip with every height on it, to be taped to a batten. */
export function rodSheets(spec: GateSpec, design: Design, { room, figures }: RodOn): SheetBody[] {
  return rodsOf(spec, design).flatMap((rod) => rodBodies(rod, room, figures))
}
