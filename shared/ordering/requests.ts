import * as v from 'valibot'
import { day, rowId } from '../pricing/shapes.ts'
import {
  rackLeavings,
  type Order,
  type OrderCandidate,
  type OrderRow,
  type OrderTask,
  type RackPiece,
} from './orderModel.ts'

const nothing = v.strictObject({})
const words = (most: number) =>
  v.pipe(v.string('a text'), v.maxLength(most, `a text of up to ${most} characters`))
const jobIds = v.pipe(v.array(rowId), v.minLength(1, 'at least one job'), v.maxLength(200, 'up to 200 jobs'))
const length = v.pipe(
  v.number('a length in mm'),
  v.finite('a length in mm'),
  v.minValue(50, 'a length of 50 mm or more'),
  v.maxValue(20_000, 'a length of up to 20000 mm'),
)
const count = v.pipe(
  v.number('a count'),
  v.integer('a whole count'),
  v.minValue(1, 'at least 1'),
  v.maxValue(1000, 'up to 1000'),
)
const place = words(60)

/** What the orders' and the rack's requests take; `OrderReplies` says what each gives. */
export const orderTakes = {
  'orders.candidates': nothing,
  'orders.task': v.strictObject({ jobIds }),
  /** plan: as the window's buying plan came out, for the request named by paired; it is checked again before it is kept. */
  'orders.place': v.strictObject({
    jobIds,
    stamp: v.string('the stamp of the task'),
    paired: v.boolean('yes or no'),
    plan: v.unknown(),
    note: words(2000),
  }),
  /** The latest 300 orders and all that are still open; with a job, every order of it. */
  'orders.list': v.strictObject({ jobId: v.optional(rowId) }),
  'orders.open': v.strictObject({ id: rowId }),
  'orders.receive': v.strictObject({
    id: rowId,
    lines: v.pipe(v.array(v.strictObject({ lineId: rowId, count })), v.minLength(1), v.maxLength(500)),
    receivedOn: day,
  }),
  'orders.cut': v.strictObject({
    id: rowId,
    lengthId: rowId,
    count,
    offcuts: v.pipe(v.array(v.strictObject({ length, place })), v.maxLength(1000)),
    cutOn: day,
  }),
  'orders.cancel': v.strictObject({ id: rowId }),
  'rack.list': nothing,
  'rack.add': v.strictObject({
    itemId: rowId,
    length,
    count,
    place,
    jobId: v.nullable(rowId),
    note: words(300),
  }),
  'rack.change': v.strictObject({ id: rowId, length, place, note: words(300) }),
  'rack.take': v.strictObject({
    ids: v.pipe(v.array(rowId), v.minLength(1), v.maxLength(500)),
    why: v.picklist(rackLeavings, `one of ${rackLeavings.join(', ')}`),
  }),
  /** A stock-take: every piece seen with where it lies; the rest that were asked for leave the rack as not found. */
  'rack.count': v.strictObject({
    seen: v.pipe(v.array(v.strictObject({ id: rowId, place })), v.maxLength(5000)),
    notFound: v.pipe(v.array(rowId), v.maxLength(5000)),
  }),
} as const

export type OrderReplies = {
  'orders.candidates': OrderCandidate[]
  'orders.task': OrderTask
  'orders.place': Order
  'orders.list': OrderRow[]
  'orders.open': Order
  'orders.receive': Order
  'orders.cut': Order
  'orders.cancel': Order
  'rack.list': RackPiece[]
  'rack.add': RackPiece[]
  'rack.change': RackPiece[]
  'rack.take': RackPiece[]
  'rack.count': RackPiece[]
}
