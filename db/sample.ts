import type { Connection } from './connection.ts'
import { sampleOrders } from './sampleOrders.ts'
import { samplePrices } from './samplePrices.ts'
import { searchRoom } from './search.ts'

/** What the workshop is called while only the sample is in the book. */
export const sampleWorkshopName = 'A made-up workshop'

export type SampleRoom = {
  /**
   * Takes every sample job out, with its papers, options, notes, photographs, orders and changes, the sample's pieces of the rack, the invented customers no other job belongs to, and the invented
   * prices that nothing of the workshop's own uses. Gives how many jobs went.
   */
  remove: () => number
}

/** Takes one job out with all that hangs on it. */
function jobDropping({ db }: Connection): (id: number) => void {
  const dropAcceptances = db.prepare(
    'DELETE FROM acceptances WHERE paper_id IN (SELECT id FROM papers WHERE job_id = ?)',
  )
  const drops = ['papers', 'options', 'work_done', 'changes', 'job_notes', 'photographs'].map((table) =>
    db.prepare(`DELETE FROM ${table} WHERE job_id = ?`),
  )
  const dropJob = db.prepare('DELETE FROM jobs WHERE id = ?')
  return (id) => [dropAcceptances, ...drops, dropJob].forEach((drop) => void drop.run(id))
}

/** The sample book's way out, in one action. What the workshop made itself stays, whoever the customer was. forget is told that prices went. */
export function sampleRoom(connection: Connection, forget: () => void): SampleRoom {
  const { db, write } = connection
  const words = searchRoom(connection)
  const jobs = db.prepare<[], { id: number }>('SELECT id FROM jobs WHERE sample = 1')
  const lonely = db.prepare<[], { id: number }>(
    'SELECT id FROM customers WHERE sample = 1 AND id NOT IN (SELECT customer_id FROM jobs)',
  )
  const dropJob = jobDropping(connection)
  const dropPrices = samplePrices(connection)
  const dropOrders = sampleOrders(connection)
  const dropCustomer = db.prepare('DELETE FROM customers WHERE id = ?')
  const adopt = db.prepare('UPDATE customers SET sample = 0 WHERE sample = 1')
  const dropName = db.prepare("DELETE FROM settings WHERE key = 'name' AND value = ?")
  return {
    remove: () =>
      write(() => {
        const gone = jobs.all()
        dropOrders()
        for (const { id } of gone) {
          dropJob(id)
          words.forgetJob(id)
        }
        for (const { id } of lonely.all()) {
          dropCustomer.run(id)
          words.forgetCustomer(id)
        }
        dropPrices()
        forget()
        adopt.run()
        dropName.run(JSON.stringify(sampleWorkshopName))
        return gone.length
      }),
  }
}
