import { figureText } from '../../drawing/figureText.ts'
import type { OrderLength } from '../../ordering/orderModel.ts'
import type { Block } from '../flow.ts'
import { safetyBlocks } from '../sawSafety.ts'
import { heading, paragraph, table, type Cell } from '../table.ts'
import { cuttings } from './cuttings.ts'
import { lengthBlocks, type Room } from './lengthBlocks.ts'
import type { TimberOrderInput } from './timberOrderInput.ts'

/** What to take from the rack before anything is cut, and where it lies. */
function rackBlocks(input: TimberOrderInput, { width, measure }: Room): Block[] {
  const { write } = figureText(input.unit)
  const pieces = input.order.lengths.flatMap((length) =>
    length.rackPieceIds.map((id) => ({ length, piece: input.rack.find((one) => one.id === id) })),
  )
  if (pieces.length === 0) return []
  const columns = [
    { title: '', width: 9 },
    {
      title: input.unit === 'mm' ? 'Length mm' : 'Length',
      width: 30,
      align: 'end' as const,
      size: 14,
      weight: 'semibold' as const,
    },
    { title: 'Timber', width: 70 },
    { title: 'Where it lies', width: width - 109 },
  ]
  const rows = pieces.map(({ length, piece }): Cell[] => {
    const place = [piece?.place.trim() ?? '', piece?.note.trim() ?? '']
      .filter((words) => words !== '')
      .join('; ')
    return [{ tick: true }, write(length.length), length.name, place === '' ? 'not told' : place]
  })
  return [heading('Take from the rack first'), ...table({ columns, rows }, measure)]
}

/** Offcuts alike counted together. */
function keptOffcuts(lengths: readonly OrderLength[]): Pick<OrderLength, 'count' | 'offcut' | 'name'>[] {
  const found: { count: number; offcut: number; name: string; itemId: number }[] = []
  for (const { count, offcut, name, itemId } of lengths) {
    const own = found.find((one) => one.itemId === itemId && one.offcut === offcut)
    if (own) own.count += count
    else found.push({ count, offcut, name, itemId })
  }
  return found
}

/** What goes back on the rack, with room to write where it was put. */
function backBlocks(input: TimberOrderInput, { width, measure }: Room): Block[] {
  const { write } = figureText(input.unit)
  const { leastOffcut } = input.order.request
  const kept = keptOffcuts(input.order.lengths.filter(({ offcut }) => offcut >= leastOffcut))
  if (kept.length === 0) return []
  const cut = { align: 'end' as const, size: 14, weight: 'semibold' as const }
  const columns = [
    { title: '', width: 9 },
    { title: 'No.', width: 14, ...cut },
    { title: input.unit === 'mm' ? 'Length mm' : 'Length', width: 30, ...cut },
    { title: 'Timber', width: 60 },
    { title: 'Where it was put', width: width - 113 },
  ]
  const rows = kept.map(({ count, offcut, name }): Cell[] => [
    { tick: true },
    String(count),
    write(offcut),
    name,
    '',
  ])
  return [heading('Back on the rack'), ...table({ columns, rows }, measure)]
}

const usedSettings = ({ order, unit }: TimberOrderInput): string => {
  const { kerf, endTrim, leastOffcut } = order.request
  const { write } = figureText(unit)
  return `Worked out with a saw cut of ${write(kerf)}, ${write(endTrim)} lost on squaring each bought length, and offcuts of ${write(leastOffcut)} or more kept. Bars are drawn to one scale and are cut from the left: black is what the saw takes, dashed what is left. Lengths are blanks; each job’s card has the finished sizes.`
}

/** All that the saw needs: what to take from the rack, how each length is cut, what goes back. */
export function sawBlocks(input: TimberOrderInput, room: Room): Block[] {
  const { lengths, request } = input.order
  const longest = Math.max(1, ...lengths.map(({ length }) => length))
  const { kerf, endTrim, leastOffcut } = request
  const { write } = figureText(input.unit)
  const scale = { perMm: room.width / longest, kerf, endTrim, leastOffcut, write, measure: room.measure }
  const sections = [...new Set(lengths.map(({ itemId }) => itemId))]
  return [
    paragraph(usedSettings(input), room),
    ...rackBlocks(input, room),
    ...sections.flatMap((itemId) => {
      const own = lengths.filter((length) => length.itemId === itemId)
      return [
        heading(own[0]?.name ?? '', room),
        ...cuttings(own).flatMap((cutting) => lengthBlocks(cutting, { input, scale, room })),
      ]
    }),
    ...backBlocks(input, room),
    ...safetyBlocks(input.dust, room),
  ]
}
