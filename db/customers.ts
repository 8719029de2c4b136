import type { Customer } from '../shared/job/job.ts'
import type { Connection } from './connection.ts'
import { searchRoom, wordsSought } from './search.ts'

export type NewCustomer = Omit<Customer, 'id'>

/** How many customers a list to choose from shows. */
const mostFound = 20

export type CustomersRoom = {
  /** Customers whose name, town or phone begin with the words, best first; without words those of the latest jobs. 20 at most. */
  find: (search: string) => Customer[]
  /** The customer of this very name, town and phone (capitals and outer spaces don't matter), or a new one. */
  take: (customer: NewCustomer, sample: boolean) => Customer
  /** Writes a customer's details over, for all of that customer's jobs. */
  rewrite: (customer: Customer) => void
}

const columns =
  'customers.id, customers.name, customers.address, customers.town, customers.phone, customers.email'

const plain = (words: string): string => words.normalize('NFC').trim().toLocaleLowerCase('en-GB')

/** Two people can share a name: without a town or a phone to tell them apart, nobody is taken for an earlier customer. */
const isKnownBy = (customer: NewCustomer): boolean =>
  customer.name.trim() !== '' && (customer.town.trim() !== '' || customer.phone.trim() !== '')

const isSame = (a: NewCustomer, b: NewCustomer): boolean =>
  (['name', 'town', 'phone'] as const).every((key) => plain(a[key]) === plain(b[key]))

const statements = ({ db }: Connection) => ({
  sought: db.prepare<[string, number], Customer>(
    `SELECT ${columns} FROM customer_words JOIN customers ON customers.id = customer_words.rowid
     WHERE customer_words MATCH ? ORDER BY rank, customers.id DESC LIMIT ?`,
  ),
  latest: db.prepare<[number], Customer>(
    `SELECT ${columns} FROM customers JOIN jobs ON jobs.customer_id = customers.id
     WHERE customers.name <> '' AND jobs.put_away = 0 GROUP BY customers.id ORDER BY max(jobs.id) DESC LIMIT ?`,
  ),
  insert: db.prepare(
    'INSERT INTO customers (name, address, town, phone, email, created_at, sample) VALUES (?, ?, ?, ?, ?, ?, ?)',
  ),
  update: db.prepare(
    'UPDATE customers SET name = ?, address = ?, town = ?, phone = ?, email = ? WHERE id = ?',
  ),
})

/** The customers' room of the book. */
export function customersRoom(connection: Connection): CustomersRoom {
  const { now, read, write } = connection
  const words = searchRoom(connection)
  const { sought, latest, insert, update } = statements(connection)

  const find = (search: string): Customer[] => {
    const question = wordsSought(search)
    return read(() => (question === '' ? latest.all(mostFound) : sought.all(question, mostFound)))
  }

  const take = (wanted: NewCustomer, sample: boolean): Customer =>
    write(() => {
      const known = isKnownBy(wanted)
        ? find(`${wanted.name} ${wanted.town}`).find((one) => isSame(one, wanted))
        : undefined
      if (known) return known
      const { name, address, town, phone, email } = wanted
      const made = insert.run(name, address, town, phone, email, now(), sample ? 1 : 0)
      const customer = { ...wanted, id: Number(made.lastInsertRowid) }
      words.keepCustomer(customer)
      return customer
    })

  const rewrite = (customer: Customer): void =>
    write(() => {
      const { id, name, address, town, phone, email } = customer
      update.run(name, address, town, phone, email, id)
      words.keepCustomer(customer)
    })

  return { find, take, rewrite }
}
