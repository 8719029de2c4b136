import type { Connection } from './connection.ts'

/** What the workshop's own book rests on: an item of the sample with a price of its own that stands, sold by a supplier of its own, named in an option of a job of its own, ordered, or lying on its rack. */
const usedItems = `
  SELECT prices.item_id FROM prices JOIN rises ON rises.id = prices.rise_id WHERE rises.sample = 0 AND rises.undone_at IS NULL
  UNION SELECT supplies.item_id FROM supplies JOIN suppliers ON suppliers.id = supplies.supplier_id WHERE suppliers.sample = 0
  UNION SELECT chosen.value FROM options JOIN jobs ON jobs.id = options.job_id, json_each(options.entry, '$.chosen') AS chosen
    WHERE jobs.sample = 0
  UNION SELECT json_extract(options.entry, '$.finish.itemId') FROM options JOIN jobs ON jobs.id = options.job_id WHERE jobs.sample = 0
  UNION SELECT item_id FROM order_lines UNION SELECT item_id FROM order_lengths UNION SELECT item_id FROM rack_pieces`

/**
 * Takes the sample's part of the price book out: items with all their prices, suppliers, rises. What the workshop has come to use stays
 * with its whole history and is its own from then on. To be called inside one writing, after the sample's jobs and orders went.
 */
export function samplePrices({ db }: Connection): () => void {
  const steps = [
    `UPDATE items SET sample = 0 WHERE sample = 1 AND id IN (${usedItems})`,
    'DELETE FROM prices WHERE item_id IN (SELECT id FROM items WHERE sample = 1)',
    'DELETE FROM supplies WHERE item_id IN (SELECT id FROM items WHERE sample = 1)',
    'DELETE FROM items WHERE sample = 1',
    `UPDATE suppliers SET sample = 0 WHERE sample = 1
     AND id IN (SELECT supplier_id FROM prices UNION SELECT supplier_id FROM supplies UNION SELECT supplier_id FROM order_lines)`,
    'DELETE FROM suppliers WHERE sample = 1',
    'UPDATE rises SET sample = 0 WHERE sample = 1 AND id IN (SELECT rise_id FROM prices)',
    'DELETE FROM rises WHERE sample = 1',
  ].map((step) => db.prepare(step))
  return () => steps.forEach((step) => void step.run())
}
