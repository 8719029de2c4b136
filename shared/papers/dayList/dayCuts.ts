import { markOf, toHalf, type CutRow } from '../../cutting/cutList.ts'
import { bladeDepth } from '../../cutting/sawSettings.ts'
import type { Board, Leaf } from '../../gate/leaf.ts'
import { workshopOf } from '../../gate/standardSpec.ts'
import { boardCounts } from '../cutTable.ts'
import { pieceNames } from '../pieceNames.ts'
import type { DayJob } from './dayListInput.ts'

/** How the saw stands for the ends of a piece: off square in degrees to a tenth, and which way; marked: cut to lines, as a notch is. */
export type EndSetting = { kind: 'square' | 'flat' | 'bevel' | 'marked'; angle: number }

/** Pieces alike of one job. depths: the blade's for each saw that cuts them, mm. */
export type DayPiece = {
  job: DayJob
  names: string
  section: string
  thickness: number
  width: number
  quantity: number
  blank: number
  length: number
  ends: string
  setting: EndSetting
  depths: number[]
}

const tenth = (angle: number): number => Math.round(angle * 10) / 10

const square: EndSetting = { kind: 'square', angle: 0 }

const slanted = (kind: 'flat' | 'bevel', angle: number): EndSetting =>
  tenth(angle) === 0 ? square : { kind, angle: tenth(angle) }

/** How the ends of the piece that a mark names are cut. */
function settingFor({ spec, design }: DayJob, mark: string): EndSetting {
  for (const leaf of design.leaves) {
    const brace = leaf.braces.find(({ name }) => markOf(leaf, `${name} brace`) === mark)
    if (brace) return brace.notch === null ? slanted('flat', brace.sawSetting) : { kind: 'marked', angle: 0 }
    if (!leaf.ledges.some(({ name }) => markOf(leaf, `${name} ledge`) === mark)) continue
    const { end } = spec.ledges
    if (spec.frame || end.cut === 'square') return square
    return slanted(end.cut === 'bevelled' ? 'bevel' : 'flat', end.angle)
  }
  return square
}

function pieceOf(job: DayJob, row: CutRow): DayPiece {
  const setting = settingFor(job, row.marks[0] ?? '')
  const { thickness, width, quantity, blank, length, ends, section } = row
  const cut = { thickness, angle: setting.angle, lean: setting.kind === 'bevel' ? 'bevel' : 'flat' } as const
  return {
    ...{ job, section, thickness, width, quantity, blank, length, ends, setting },
    names: pieceNames(row, boardCounts(job.design.leaves)),
    depths: workshopOf(job.spec).saws.map((saw) => bladeDepth(cut, saw)),
  }
}

/** Every piece of some jobs, a row for those alike in one job. */
export const dayPieces = (jobs: readonly DayJob[]): DayPiece[] =>
  jobs.flatMap((job) => job.design.cuts.map((row) => pieceOf(job, row)))

export type SectionGroup = { section: string; thickness: number; width: number; pieces: DayPiece[] }
export type SettingGroup = { setting: EndSetting; sections: SectionGroup[] }

const order: EndSetting['kind'][] = ['square', 'flat', 'bevel', 'marked']

const bySetting = (a: EndSetting, b: EndSetting): number =>
  order.indexOf(a.kind) - order.indexOf(b.kind) || a.angle - b.angle

const nameOrder = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0)

function sectionGroups(pieces: readonly DayPiece[]): SectionGroup[] {
  const groups = new Map<string, SectionGroup>()
  for (const piece of pieces) {
    const { section, thickness, width } = piece
    const key = JSON.stringify([section, thickness, width])
    const own = groups.get(key)
    if (own) own.pieces.push(piece)
    else groups.set(key, { section, thickness, width, pieces: [piece] })
  }
  const sorted = [...groups.values()].sort((a, b) => nameOrder(a.section, b.section) || a.width - b.width)
  for (const group of sorted) group.pieces.sort((a, b) => b.blank - a.blank)
  return sorted
}

/** Pieces by how the saw stands, square ones first; within that by section, the longest first. */
export function settingGroups(pieces: readonly DayPiece[]): SettingGroup[] {
  const groups = new Map<string, { setting: EndSetting; pieces: DayPiece[] }>()
  for (const piece of pieces) {
    const key = `${piece.setting.kind} ${piece.setting.angle}`
    const own = groups.get(key)
    if (own) own.pieces.push(piece)
    else groups.set(key, { setting: piece.setting, pieces: [piece] })
  }
  return [...groups.values()]
    .sort((a, b) => bySetting(a.setting, b.setting))
    .map((group) => ({ setting: group.setting, sections: sectionGroups(group.pieces) }))
}

/** A board ripped or planed to a fence: what it loses, and how it is called. fence mm. */
export type DayRip = { job: DayJob; fence: number; boards: string; loses: string; depths: number[] }

const lost: Record<'groove' | 'tongue' | 'rip', string> = {
  groove: 'groove off',
  tongue: 'tongue off',
  rip: 'ripped',
}

const losesWords = ({ loses }: Board): string =>
  (['hanging', 'closing'] as const)
    .flatMap((edge) => {
      const what = loses[edge]
      return what === 'nothing' ? [] : [`${lost[what]} at the ${edge} edge`]
    })
    .join(', ')

const ripsOf = (job: DayJob, leaf: Leaf): DayRip[] =>
  leaf.boards.flatMap((board, i): DayRip[] => {
    if (board.fence === null) return []
    const { thickness } = job.spec.boards.section
    const cut = { thickness, angle: 0, lean: 'flat' } as const
    const depths = workshopOf(job.spec).saws.map((saw) => bladeDepth(cut, saw))
    const boards = markOf(leaf, `board ${i + 1}`)
    return [{ job, fence: toHalf(board.fence), boards, loses: losesWords(board), depths }]
  })

/** Every board that goes along the fence, the widest setting first. */
export const dayRips = (jobs: readonly DayJob[]): DayRip[] =>
  jobs
    .flatMap((job) => job.design.leaves.flatMap((leaf) => ripsOf(job, leaf)))
    .sort((a, b) => b.fence - a.fence)

export type Totals = { pieces: number; metres: number }

/** How many pieces, and how many metres of timber their blanks take. */
export function totals(pieces: readonly DayPiece[]): Totals {
  const mm = pieces.reduce((sum, { quantity, blank }) => sum + quantity * blank, 0)
  return { pieces: pieces.reduce((sum, { quantity }) => sum + quantity, 0), metres: mm / 1000 }
}
