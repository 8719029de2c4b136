import type { Customer } from '../shared/job/job.ts'
import type { Connection } from './connection.ts'
import { bestFirst } from './bestFirst.ts'
import { searchRoom, wordsSought, wordsTyped } from './search.ts'

export type NewCustomer = Omit<Customer, 'id'>

/** How many customers a list to choose from shows. */
const mostFound = 20

/** As many of the newest customers that hold the words are ranked, and as many of the newest jobs looked at for their customers. */
const mostLookedAt = 500

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
    `SELECT ${columns} FROM (SELECT rowid AS id FROM customer_words WHERE customer_words MATCH ? ORDER BY rowid DESC LIMIT ?) AS found
     CROSS JOIN customers ON customers.id = found.id ORDER BY customers.id DESC`,
  ),
  latest: db.prepare<[number, number], Customer>(
    `SELECT ${columns} FROM (
       SELECT customer_id AS id, max(job) AS job FROM (SELECT id AS job, customer_id FROM jobs NOT INDEXED WHERE id > (SELECT max(id) FROM jobs) - ? AND put_away = 0) GROUP BY customer_id
     ) AS found CROSS JOIN customers ON customers.id = found.id WHERE customers.name <> '' ORDER BY found.job DESC LIMIT ?`,
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
    if (question === '') return read(() => latest.all(mostLookedAt, mostFound))
    const found = read(() => sought.all(question, mostLookedAt))
    const ranked = bestFirst(found, wordsTyped(search), ({ name, town, phone }) => [name, town, phone])
    return ranked.slice(0, mostFound)
  }

  /** The customer of this very name, town and phone, however many share a part of them. */
  const known = (wanted: NewCustomer): Customer | undefined => {
    const question = wordsSought(`${wanted.name} ${wanted.town} ${wanted.phone}`)
    return question === '' ? undefined : sought.all(question, -1).find((one) => isSame(one, wanted))
  }

  const take = (wanted: NewCustomer, sample: boolean): Customer =>
    write(() => {
      const before = isKnownBy(wanted) ? known(wanted) : undefined
      if (before) return before
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
