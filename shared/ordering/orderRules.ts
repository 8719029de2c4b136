import type { Problem } from '../problem.ts'
import { writeShortMm } from '../units/writeLength.ts'
import type { Order, OrderLength, OrderLine } from './orderModel.ts'

const refused = (field: string, message: string): Problem => ({ code: 'refused', field, message })

const cancelled = ({ number }: Order): Problem => refused('id', `order ${number} was cancelled`)

/** How many lengths of a row haven't come yet. */
export const outstandingOf = ({ count, received }: Pick<OrderLine, 'count' | 'received'>): number =>
  count - received

/** How many lengths can be cut now: of the merchant's those that came and aren't cut, of the rack's those not cut yet. */
export function readyToCut(
  { lines, lengths }: Pick<Order, 'lines' | 'lengths'>,
  length: OrderLength,
): number {
  const left = length.count - length.done
  if (length.from === 'rack') return left
  const alike = (one: { itemId: number; length: number }) =>
    one.itemId === length.itemId && one.length === length.length
  const came = lines.filter(alike).reduce((sum, { received }) => sum + received, 0)
  const cut = lengths
    .filter((one) => one.from === 'merchant' && alike(one))
    .reduce((sum, { done }) => sum + done, 0)
  return Math.max(0, Math.min(left, came - cut))
}

/** What is left of a length beside its parts, mm, were nothing lost at the saw: no offcut of it is longer. */
export const mostLeft = ({ length, cuts }: Pick<OrderLength, 'length' | 'cuts'>): number =>
  Math.round((length - cuts.reduce((sum, cut) => sum + cut.length, 0)) * 10) / 10

type Came = { lineId: number; count: number }

/** Why lengths can't be booked in: a row of another order, or more than are still to come. */
export function receiveProblems(order: Order, came: readonly Came[]): Problem[] {
  if (order.state === 'cancelled') return [cancelled(order)]
  const total = new Map<number, number>()
  return came.flatMap(({ lineId, count }, place) => {
    const line = order.lines.find(({ id }) => id === lineId)
    if (!line) return [refused(`lines[${place}].lineId`, `order ${order.number} has no such row`)]
    const sum = (total.get(lineId) ?? 0) + count
    total.set(lineId, sum)
    const open = outstandingOf(line)
    if (sum <= open) return []
    const words = `${line.name}, ${writeShortMm(line.length)} long: ${sum} came, ${open} are still to come`
    return [refused(`lines[${place}].count`, words)]
  })
}

type Cut = { lengthId: number; count: number; offcuts: readonly { length: number }[] }

/** Why lengths can't be put down as cut: more than are there, or offcuts longer than what is left of them. */
export function cutProblems(order: Order, { lengthId, count, offcuts }: Cut): Problem[] {
  if (order.state === 'cancelled') return [cancelled(order)]
  const length = order.lengths.find(({ id }) => id === lengthId)
  if (!length) return [refused('lengthId', `order ${order.number} has no such length`)]
  const ready = readyToCut(order, length)
  if (count > ready)
    return [refused('count', `${count} were cut, ${ready} ${ready === 1 ? 'is' : 'are'} there to be cut`)]
  const most = mostLeft(length)
  const long = offcuts.flatMap((offcut, place) =>
    offcut.length > most
      ? [
          refused(
            `offcuts[${place}].length`,
            `an offcut of ${writeShortMm(offcut.length)} is longer than what is left: ${writeShortMm(most)}`,
          ),
        ]
      : [],
  )
  const sum = offcuts.reduce((total, offcut) => total + offcut.length, 0)
  if (long.length > 0 || sum <= most * count + 1e-6) return long
  return [
    refused(
      'offcuts',
      `the offcuts come to ${writeShortMm(sum)}; no more than ${writeShortMm(most * count)} is left`,
    ),
  ]
}

/** Why an order can't be cancelled any more. */
export function cancelProblems(order: Order): Problem[] {
  const { number, state, lines, lengths } = order
  if (state === 'cancelled') return [refused('id', `order ${number} was cancelled before`)]
  if (lines.some(({ received }) => received > 0))
    return [refused('id', `timber of order ${number} has come already; it can’t be cancelled any more`)]
  if (lengths.some(({ done }) => done > 0))
    return [refused('id', `lengths of order ${number} are cut already; it can’t be cancelled any more`)]
  return []
}
