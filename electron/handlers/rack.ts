import type { RackPiece } from '../../shared/ordering/orderModel.ts'
import { bad, good, type Problem, type Result } from '../../shared/problem.ts'
import { writeShortMm } from '../../shared/units/writeLength.ts'
import type { Context, Handler } from './context.ts'
import { missing } from './missing.ts'

const onRack = 'piece on the rack'

const kept = (field: string, { name, length, keptFor }: RackPiece): Problem => ({
  code: 'kept',
  field,
  message: `${name}, ${writeShortMm(length)} long, is kept for order ${keptFor}; cut it there, or cancel that order first`,
})

export const listRack: Handler<'rack.list'> = ({ book }) => good(book.rack.list())

/** Puts pieces of the workshop's own on the rack. One left from a sample job goes with the sample. */
export const addToRack: Handler<'rack.add'> = ({ book, now }, { count, ...piece }) => {
  const { itemId, length, jobId } = piece
  if (book.prices.item(itemId)?.kind !== 'timber') return bad(missing('itemId', 'timber'))
  const job = jobId === null ? null : book.jobs.open(jobId)
  if (job === undefined) return bad(missing('jobId', 'job'))
  const [place, note] = [piece.place.trim(), piece.note.trim()]
  const made = {
    itemId,
    length,
    jobId,
    place,
    note,
    addedOn: now().slice(0, 10),
    sample: job?.sample ?? false,
  }
  return book.together(() => {
    for (let added = 0; added < count; added += 1) book.rack.add(made)
    return good(book.rack.list())
  })
}

/** Sets a piece right. One that is kept for an order keeps its length: the order's plan is made for it. */
export const changeRackPiece: Handler<'rack.change'> = ({ book, now }, { id, length, place, note }) =>
  book.together(() => {
    const piece = book.rack.one(id)
    if (!piece) return bad(missing('id', onRack))
    if (piece.keptFor !== null && piece.length !== length) return bad(kept('length', piece))
    book.rack.change(id, { length, place: place.trim(), note: note.trim() }, now().slice(0, 10))
    return good(book.rack.list())
  })

/** The pieces named, or a problem for each that isn't on the rack. */
function piecesOf({ book }: Context, ids: readonly number[], field: string): Result<RackPiece[]> {
  const pieces = ids.map((id) => book.rack.one(id))
  const gone = pieces.flatMap((piece, place) => (piece ? [] : [missing(`${field}[${place}]`, onRack)]))
  return gone.length > 0 ? bad(...gone) : good(pieces.flatMap((piece) => piece ?? []))
}

/** Takes pieces off the rack, all or none. One that is kept for an order stays. */
export const takeFromRack: Handler<'rack.take'> = (context, { ids, why }) =>
  context.book.together(() => {
    const { book, now } = context
    const found = piecesOf(context, ids, 'ids')
    if (!found.ok) return found
    const held = found.value.flatMap((piece, place) =>
      piece.keptFor === null ? [] : [kept(`ids[${place}]`, piece)],
    )
    if (held.length > 0) return bad(...held)
    for (const id of new Set(ids)) book.rack.take(id, { why, on: now().slice(0, 10) })
    return good(book.rack.list())
  })

/** A stock-take: what was seen is put down with its place, what wasn't leaves the rack, kept for an order or not. */
export const countRack: Handler<'rack.count'> = (context, { seen, notFound }) =>
  context.book.together(() => {
    const { book, now } = context
    const ids = seen.map(({ id }) => id)
    const results = [piecesOf(context, ids, 'seen'), piecesOf(context, notFound, 'notFound')]
    const problems = results.flatMap((result) => (result.ok ? [] : result.problems))
    const both = notFound.filter((id) => ids.includes(id))
    if (both.length > 0)
      problems.push({
        code: 'refused',
        field: 'notFound',
        message: 'a piece was seen, and told as not found too; say which',
      })
    if (problems.length > 0) return bad(...problems)
    const on = now().slice(0, 10)
    for (const { id, place } of seen) book.rack.seen(id, place.trim(), on)
    for (const id of new Set(notFound)) book.rack.take(id, { why: 'not found', on })
    return good(book.rack.list())
  })
