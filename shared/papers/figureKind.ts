import type { Design } from '../gate/designModel.ts'
import type { LeafName } from '../gate/leaf.ts'
import { boardCounts } from './cutTable.ts'
import { pieceNames } from './pieceNames.ts'

/** A figure's id taken apart: whose leaf's it is ('leaf' also for what is of the gate as a whole), its kind ('brace.angle'), and which one of the kind: a part's name, or a number among things of one noun. */
export type FigureKind = {
  leaf: LeafName
  kind: string
  place: { noun: string; number: number | null } | null
}

const prefixes = [
  ['second.', 'second leaf'],
  ['upper.', 'upper half'],
] as const

const words = (part: string): string => part.replace(/-/g, ' ')

const one = (noun: string): FigureKind['place'] => ({ noun, number: null })

/** Which air, and in it which board: 'movement.wettest.board.3', 'movement.month.7.jointGap'. */
function airKind([air = '', ...rest]: string[]): Omit<FigureKind, 'leaf'> {
  const month = air === 'month'
  const [first = '', ...more] = month ? rest.slice(1) : rest
  const called = month ? `month ${rest[0]}` : air
  if (first !== 'board') return { kind: `movement.${first}`, place: one(called) }
  return { kind: 'movement.board', place: { noun: `${called}, board`, number: Number(more[0]) } }
}

function fittingKind(rest: string[]): Omit<FigureKind, 'leaf'> {
  const [piece = '', number = '', ...more] = rest
  if (piece === 'hinges') return { kind: `fitting.${number}`, place: null }
  return { kind: `fitting.${more.join('.')}`, place: { noun: piece, number: Number(number) } }
}

/** Saw settings and rows of the cut list by what is cut. */
function cutPlace(design: Design, group: 'saw' | 'cut', index: number): FigureKind['place'] {
  if (group === 'cut') {
    const row = design.cuts[index]
    return one(row ? pieceNames(row, boardCounts(design.leaves)) : `row ${index + 1}`)
  }
  const setting = design.sawSettings[index]
  if (!setting) return one(`cut ${index + 1}`)
  const part = setting.part === 'boards' ? '' : `: ${setting.part}`
  return one(`${setting.cut}${part}, ${setting.saw}`)
}

function apart(design: Design, id: string): Omit<FigureKind, 'leaf'> {
  const [group = '', second = '', ...rest] = id.split('.')
  const named = (kind: string): Omit<FigureKind, 'leaf'> => ({ kind, place: one(words(second)) })
  switch (group) {
    case 'movement':
      return airKind([second, ...rest])
    case 'fitting':
      return fittingKind([second, ...rest])
    case 'saw':
    case 'cut':
      return { kind: `${group}.${rest.join('.')}`, place: cutPlace(design, group, Number(second) - 1) }
    case 'board':
    case 'fixing':
    case 'hinge':
      return { kind: `${group}.${rest.join('.')}`, place: { noun: group, number: Number(second) } }
    case 'top':
      return { kind: `top.${second}`, place: null }
    case 'ledge':
    case 'hole':
      return named(`${group}.${rest.join('.')}`)
    case 'brace':
      return { kind: `brace.${rest.join('.')}`, place: second === 'single' ? null : one(second) }
    case 'frame':
      return rest.length > 0 ? named(`frame.${rest.join('.')}`) : { kind: id, place: null }
    case 'weight':
      if (second === 'ironmongery')
        return { kind: 'weight', place: one(`ironmongery, ${rest.join(' ')} side`) }
      return named(['weight', ...rest].join('.'))
    default:
      return { kind: id, place: null }
  }
}

/** Takes a figure's id apart. */
export function figureKind(design: Design, id: string): FigureKind {
  const found = prefixes.find(([prefix]) => id.startsWith(prefix))
  const ofGate = /^(opening|whole|hole|saw|cut|movement)\./.test(id)
  const leaf = ofGate ? 'leaf' : (found?.[1] ?? design.leaves[0]?.name ?? 'leaf')
  return { leaf, ...apart(design, found ? id.slice(found[0].length) : id) }
}
