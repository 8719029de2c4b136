import type { Connection } from './connection.ts'

const samples = 'SELECT id FROM orders WHERE sample = 1'
const sampleLines = `SELECT id FROM order_lines WHERE order_id IN (${samples})`
const sampleLengths = `SELECT id FROM order_lengths WHERE order_id IN (${samples})`

/**
 * Takes the sample's orders out, and the sample's pieces of the rack. A piece that an order of the workshop's own is cut from stays and is
 * its own from then on. To be called inside one writing, before the sample jobs go.
 */
export function sampleOrders({ db }: Connection): () => void {
  const steps = [
    `UPDATE rack_pieces SET sample = 0 WHERE sample = 1 AND id IN (
       SELECT piece_id FROM order_rack WHERE length_id NOT IN (${sampleLengths}))`,
    `DELETE FROM order_cuts WHERE length_id IN (${sampleLengths})`,
    `DELETE FROM order_rack WHERE length_id IN (${sampleLengths})`,
    `DELETE FROM order_receipts WHERE line_id IN (${sampleLines})`,
    `DELETE FROM order_lengths WHERE order_id IN (${samples})`,
    `DELETE FROM order_lines WHERE order_id IN (${samples})`,
    `DELETE FROM order_jobs WHERE order_id IN (${samples})`,
    'DELETE FROM orders WHERE sample = 1',
    'DELETE FROM rack_moves WHERE piece_id IN (SELECT id FROM rack_pieces WHERE sample = 1)',
    'DELETE FROM rack_pieces WHERE sample = 1',
    'UPDATE rack_pieces SET job_id = NULL WHERE job_id IN (SELECT id FROM jobs WHERE sample = 1)',
  ].map((step) => db.prepare(step))
  return () => steps.forEach((step) => void step.run())
}
