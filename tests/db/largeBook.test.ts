import Sqlite from 'better-sqlite3'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { fillLargeBook } from '../../build/largeBook/fillLargeBook.ts'
import { bookToday } from '../../build/largeBook/course.ts'
import { connect, type Connection } from '../../db/connection.ts'
import { customersRoom } from '../../db/customers.ts'
import { jobsRoom } from '../../db/jobs.ts'
import { openBook } from '../../db/open.ts'
import { ordersRoom } from '../../db/orders.ts'
import { quotationsRoom } from '../../db/quotations.ts'
import { digestOf, faultsOf } from '../faults/bookDigest.ts'
import { openedBook, temporaryFolder } from './temporaryBook.ts'

const count = 60
const now = () => `${bookToday}T09:00:00.000Z`

async function made(path: string): Promise<Sqlite.Database> {
  await fillLargeBook(path, count, 41)
  return new Sqlite(path, { readonly: true })
}

/** Every question a room asks while some work is done with it, with how the store goes about each. */
function plansOf(connection: Connection, work: (connection: Connection) => void): string[] {
  const plans: string[] = []
  const asked = new Set<string>()
  const { db } = connection
  const listening = new Sqlite(db.name, { readonly: true, verbose: (sql) => void asked.add(String(sql)) })
  work({ ...connection, db: listening })
  listening.close()
  for (const sql of asked)
    for (const { detail } of db.prepare<[], { detail: string }>(`EXPLAIN QUERY PLAN ${sql}`).all())
      plans.push(detail)
  return plans
}

/** Followed in their order and left after so many: the newest, those touched last, those accepted last. */
const bounded = ['jobs USING INDEX jobs_by_age', 'jobs USING INDEX jobs_by_change', 'acceptances']

/** Steps that look at every row of a table of the book. */
const wholeTables = (plans: string[]): string[] =>
  plans.filter((plan) => {
    const scanned = /^SCAN ((jobs|customers|papers|acceptances|orders|changes|order_\w+|work_done)\b.*)/.exec(
      plan,
    )?.[1]
    return scanned !== undefined && !bounded.includes(scanned)
  })

/** What a window asks for all day: none of it may look at every row of a table. */
function hotRequests(path: string): void {
  const connection = connect(path, now)
  const plans = plansOf(connection, (listening) => {
    const jobs = jobsRoom(listening, customersRoom(listening))
    jobs.list('', null)
    jobs.list('', 'making')
    jobs.list('gate', null)
    jobs.list('gate', 'hung')
    jobs.due('2026-03-20', 100)
    jobs.toOrder()
    jobs.open(30)
    jobs.changes(30)
    customersRoom(listening).find('')
    customersRoom(listening).find('m')
    ordersRoom(listening).ofJob(30)
    ordersRoom(listening).standingFor(30)
    for (const step of quotationsRoom(listening).standingSteps(bookToday)) expect(step).toBeUndefined()
  })
  expect(plans.length).toBeGreaterThan(20)
  expect(wholeTables(plans)).toEqual([])
  connection.close()
}

describe('a book of many jobs', () => {
  it('is made alike from one seed, holds together, and answers the hot requests without looking through a table', async () => {
    const folder = temporaryFolder()
    const [one, again] = [await made(join(folder, 'one.book')), await made(join(folder, 'again.book'))]
    expect(digestOf(again)).toBe(digestOf(one))
    expect(faultsOf(one)).toEqual([])
    const number = (sql: string) => Number(one.prepare(sql).pluck().get())
    expect(number('SELECT count(*) FROM jobs WHERE sample = 0')).toBe(count)
    expect(
      number('SELECT count(DISTINCT substr(created_at, 1, 4)) FROM jobs WHERE sample = 0'),
    ).toBeGreaterThan(9)
    expect(number('SELECT count(*) FROM papers')).toBeGreaterThan(count / 2)
    expect(number('SELECT count(*) FROM prices')).toBeGreaterThan(1000)
    expect(number('SELECT count(*) FROM order_cuts')).toBeGreaterThan(20)
    again.close()
    one.close()
    hotRequests(join(folder, 'one.book'))
  })

  it('is opened before it is looked through where it is large', () => {
    const folder = temporaryFolder()
    openedBook(join(folder, 'small.book')).close()
    const options = { now }
    const small = openBook(join(folder, 'small.book'), options)
    small.close()
    const large = openBook(join(folder, 'small.book'), { ...options, mostBeforeOpening: 4096 })
    large.close()
    expect([small.lookedThrough, large.lookedThrough]).toEqual([true, false])
  })
})
