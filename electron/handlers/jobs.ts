import { standardDraft } from '../../shared/gate/standardSpec.ts'
import { bad, good } from '../../shared/problem.ts'
import { readJobField } from '../../shared/job/jobField.ts'
import type { Handler } from './context.ts'
import { foundOr, missing } from './missing.ts'
import { paperDate } from '../../shared/papers/paperDate.ts'

export const openJob: Handler<'jobs.open'> = ({ book }, { id }) => foundOr(book.jobs.open(id), 'id', 'job')

/** A new enquiry. The gate starts from the standard with the workshop's own saws and drills copied in, its sizes still to come. */
export const createJob: Handler<'jobs.create'> = ({ book }, { customerName, town, phone, title, due }) => {
  const day = readJobField('due', due)
  if (!day.ok) return day
  const { unit, workshop } = book.settings.read()
  const customer = {
    name: customerName.trim(),
    address: '',
    town: town.trim(),
    phone: phone.trim(),
    email: '',
  }
  return good(book.jobs.create({ customer, title: title.trim(), due, unit, spec: standardDraft(workshop) }))
}

export const changeJob: Handler<'jobs.change'> = ({ book }, { id, changes, hand }) =>
  book.deeds.by({ hand, jobId: id }, () => book.jobs.change(id, changes)) ?? bad(missing('id', 'job'))

/** The same again. The old job's notes stay with it; the new one says whose it follows: 'As job 2024-012 of 4 May 2024.' */
export const repeatJob: Handler<'jobs.repeat'> = ({ book, dayOf }, { id }) =>
  foundOr(
    book.deeds.by({ came: 'made again' }, () =>
      book.jobs.repeat(id, ({ number, createdAt }) => `As job ${number} of ${paperDate(dayOf(createdAt))}.`),
    ),
    'id',
    'job',
  )

export const findCustomers: Handler<'customers.find'> = ({ book }, { search }) =>
  good(book.customers.find(search))
