import { figureText } from '../../drawing/figureText.ts'
import { writeShortMm } from '../../units/writeLength.ts'
import type { Block } from '../flow.ts'
import type { Measure } from '../page.ts'
import { dustKnown, safetyBlocks } from '../sawSafety.ts'
import { heading, paragraph, table, type Cell, type Column } from '../table.ts'
import {
  dayPieces,
  dayRips,
  settingGroups,
  totals,
  type DayPiece,
  type EndSetting,
  type SectionGroup,
  type Totals,
} from './dayCuts.ts'
import type { DayListInput } from './dayListInput.ts'

type Room = { width: number; measure: Measure }

const writeAngle = (angle: number): string => `${writeShortMm(angle)}°`

/** What a setting of the saw is called. */
export function settingWords({ kind, angle }: EndSetting): string {
  if (kind === 'square') return 'Saw square'
  if (kind === 'marked') return 'Cut to the marks'
  return kind === 'bevel' ? `Blade tilted ${writeAngle(angle)}` : `Saw ${writeAngle(angle)} off square`
}

const totalWords = ({ pieces, metres }: Totals): string =>
  `${pieces} ${pieces === 1 ? 'piece' : 'pieces'}, ${metres.toFixed(1)} m`

/** Depths of the blade: one figure, or from the least to the most where saws' teeth differ. */
function depthWords(depths: readonly number[], write: (mm: number) => string): string {
  if (depths.length === 0) return ''
  const [least, most] = [write(Math.min(...depths)), write(Math.max(...depths))]
  return `blade ${least === most ? least : `${least}–${most}`} deep`
}

/** A section under its setting: its own sizes, how deep the blade goes, how much there is. */
function sectionHead(group: SectionGroup, write: (mm: number) => string, { width, measure }: Room): Block {
  const sizes = `${writeShortMm(group.thickness)} × ${writeShortMm(group.width)}`
  const depth = depthWords(
    group.pieces.flatMap(({ depths }) => depths),
    write,
  )
  const words = [`${group.section}, ${sizes}`, depth, totalWords(totals(group.pieces))]
  return {
    ...paragraph(words.filter((part) => part !== '').join(' · '), { width, measure, size: 12 }),
    above: 2.4,
    withNext: true,
  }
}

const cut = { align: 'end' as const, size: 14, weight: 'semibold' as const }

function columnsFor({ unit }: DayListInput, width: number): Column[] {
  const long = unit === 'mm' ? 24 : 29
  const title = (words: string) => (unit === 'mm' ? `${words} mm` : words)
  return [
    { title: '', width: 9 },
    { title: 'No.', width: 13, ...cut },
    { title: title('Cut'), width: long, ...cut },
    { title: title('Finished'), width: long, ...cut },
    { title: 'Job', width: 24 },
    { title: 'Part', width: 38 },
    { title: 'Ends', width: width - 84 - 2 * long },
  ]
}

/** Ends in few words, without what the setting of the saw says already. */
function endWords({ ends, setting }: DayPiece): string {
  if (ends === 'both ends square' || (setting.kind === 'flat' && ends.endsWith('off square, parallel')))
    return ''
  return ends
    .replace(/^both ends square; /, '')
    .replace(/ once together$/, '')
    .replace(/^head [\d.]+ at the hanging edge, [\d.]+ at the closing edge, cut/, 'head cut to the top')
}

const pieceRow = (piece: DayPiece, write: (mm: number) => string): Cell[] => [
  { tick: true },
  String(piece.quantity),
  write(piece.blank),
  piece.blank === piece.length ? '' : write(piece.length),
  piece.job.number,
  piece.names,
  endWords(piece),
]

/** The cuts of one setting of the saw, section by section. */
function settingBlocks(input: DayListInput, pieces: readonly DayPiece[], room: Room): Block[] {
  const { write } = figureText(input.unit)
  const columns = columnsFor(input, room.width)
  return settingGroups(pieces).flatMap(({ setting, sections }) => [
    heading(settingWords(setting)),
    ...sections.flatMap((group, i) => {
      const rows = table({ columns, rows: group.pieces.map((piece) => pieceRow(piece, write)) }, room.measure)
      // The columns are named once under each setting, and again by themselves where rows go on over a page.
      return [sectionHead(group, write, room), ...(i === 0 ? rows : rows.slice(1))]
    }),
  ])
}

/** Boards along the fence, each with where it is set. */
function ripBlocks(input: DayListInput, { width, measure }: Room): Block[] {
  const { write } = figureText(input.unit)
  const rips = dayRips(input.jobs)
  if (rips.length === 0) return []
  const columns = [
    { title: '', width: 9 },
    { title: input.unit === 'mm' ? 'Fence mm' : 'Fence', width: 28, ...cut },
    { title: 'Job', width: 26 },
    { title: 'Board', width: 40 },
    { title: 'What comes off', width: width - 103 },
  ]
  const rows = rips.map(({ fence, job, boards, loses }): Cell[] => [
    { tick: true },
    write(fence),
    job.number,
    boards,
    loses,
  ])
  const depth = depthWords(
    rips.flatMap(({ depths }) => depths),
    write,
  )
  return [
    heading('Along the fence'),
    ...(depth === ''
      ? []
      : [
          {
            ...paragraph(`After cutting to length · ${depth}`, { width, measure, size: 12 }),
            withNext: true,
          },
        ]),
    ...table({ columns, rows }, measure),
  ]
}

/** The jobs of the day with how much each has to be cut, and all together. */
function jobBlocks({ jobs }: DayListInput, pieces: readonly DayPiece[], { width, measure }: Room): Block[] {
  const columns = [
    { title: 'Job', width: 28, weight: 'semibold' as const },
    { title: 'For', width: 62 },
    { title: '', width: width - 136 },
    { title: 'Pieces', width: 20, align: 'end' as const },
    { title: 'Metres', width: 26, align: 'end' as const },
  ]
  const row = (cells: [string, string, string], sum: Totals): Cell[] => [
    ...cells,
    String(sum.pieces),
    sum.metres.toFixed(1),
  ]
  const rows = jobs.map((job) =>
    row([job.number, job.customer, job.title], totals(pieces.filter((piece) => piece.job === job))),
  )
  const all = jobs.length > 1 ? [row(['In all', '', ''], totals(pieces))] : []
  return table({ columns, rows: [...rows, ...all] }, measure)
}

/** All of the day list under its head: the jobs, the cautions, then the cuts by setting. */
export function dayBlocks(input: DayListInput, room: Room): Block[] {
  const pieces = dayPieces(input.jobs)
  return [
    ...jobBlocks(input, pieces, room),
    ...safetyBlocks(dustKnown(input.jobs.map(({ spec }) => spec)), room),
    ...settingBlocks(input, pieces, room),
    ...ripBlocks(input, room),
  ]
}
