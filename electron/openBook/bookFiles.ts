import type { Snapshot } from '../../db/openBook/snapshot.ts'
import { csvHead, csvLine } from '../../shared/openBook/csv.ts'
import { bookFormat, contentsName, formatVersion } from '../../shared/openBook/manifest.ts'
import { safeName } from '../../shared/openBook/safeName.ts'
import { tablesIn, type OpenRow, type OpenRows, type TableName } from '../../shared/openBook/tables.ts'

/** One file of a book taken out: where it goes, and its text or bytes piece by piece. damaged: the paper it belongs to isn't what was issued any more; its name. */
export type OpenFile = { place: string; pieces: Iterable<string | Uint8Array>; damaged?: string }

/** Rows that one file holds at most where there is no file for each. */
const mostInFile = 500

const written = (rows: OpenRows | object): string => `${JSON.stringify(rows, null, 2)}\n`

const aboutText = `A job book of Bracework, taken out to be read by people and programs.

settings.json       the workshop: its name, saws, money, standard times; the sections it keeps
customers.json      who the jobs are for
prices              suppliers, the lines of the price book, every change of prices and every price there ever was
jobs                a file for each job: the gate as it was entered, its options, its notes, what it took, every change made to it
papers              each paper as it was issued, with what it was made from; sha256 is its fingerprint
rack.json           offcuts and lengths on the rack, and what became of each
orders              a file for each order of timber, with its plan, what came and what was cut
book.json           says what belongs to this folder

Lengths are in mm, money in whole pence without tax, moments by universal time. Rows point at each other by their id.
In the list of prices the last three columns are there to be read; the numbers before them count.
Bracework brings the folder in again under Workshop. It checks all of it first.
`

/** Rows in lists of up to so many; at least one list, also of none. */
function* inLists(rows: Iterable<OpenRow>): Generator<OpenRow[]> {
  const held: OpenRow[] = []
  let lists = 0
  for (const row of rows) {
    held.push(row)
    if (held.length < mostInFile) continue
    yield held.splice(0)
    lists += 1
  }
  if (held.length > 0 || lists === 0) yield held
}

const numbered = (name: string, place: number): string =>
  place === 0 ? `${name}.json` : `${name} ${place + 1}.json`

function* customerFiles(snapshot: Snapshot): Generator<OpenFile> {
  let place = 0
  for (const customers of inLists(snapshot.all('customers'))) {
    yield { place: numbered('customers', place), pieces: [written({ customers })] }
    place += 1
  }
}

function* csvPieces(
  snapshot: Snapshot,
  table: TableName,
  beside?: (row: OpenRow) => string[],
): Generator<string> {
  yield csvHead(table, snapshot.layout)
  const line = csvLine(table, snapshot.layout)
  for (const row of snapshot.all(table)) yield line(row, beside?.(row))
}

const namesOf = (rows: Iterable<OpenRow>, key: string): Map<unknown, string> => {
  const names = new Map<unknown, string>()
  for (const row of rows) names.set(row['id'], String(row[key]))
  return names
}

function* priceFiles(snapshot: Snapshot): Generator<OpenFile> {
  yield { place: 'prices/suppliers.csv', pieces: csvPieces(snapshot, 'suppliers') }
  let place = 0
  for (const items of inLists(snapshot.all('items'))) {
    const supplies = items.flatMap(({ id }) => snapshot.of('supplies', 'itemId', id))
    yield { place: `prices/${numbered('lines', place)}`, pieces: [written({ items, supplies })] }
    place += 1
  }
  yield { place: 'prices/rises.csv', pieces: csvPieces(snapshot, 'rises') }
  const items = namesOf(snapshot.all('items'), 'name')
  const suppliers = namesOf(snapshot.all('suppliers'), 'name')
  const rises = namesOf(snapshot.all('rises'), 'origin')
  const beside = ({ itemId, supplierId, riseId }: OpenRow) => [
    items.get(itemId) ?? '',
    suppliers.get(supplierId) ?? '',
    rises.get(riseId) ?? '',
  ]
  yield { place: 'prices/prices.csv', pieces: csvPieces(snapshot, 'prices', beside) }
}

/** The folder of a numbered thing: its year's, or the sample's. */
const yearOf = (number: string): string => safeName(number.split('-')[0] ?? '')

const paperKind = (kind: unknown): string => (kind === 'quotation' ? 'quotation' : 'card')

/** What lies beside a paper that isn't what was issued any more. */
const damagedText = (paper: OpenRow): string =>
  `This paper is no longer what was issued on ${String(paper['issuedAt']).slice(0, 10)}: its fingerprint isn’t ${String(paper['sha256'])}, as it was then.
It lies here as it was found in the book. Bracework can put it back from a copy: Workshop, Safe keeping, go over the papers.
`

function* paperFiles(snapshot: Snapshot, number: string, jobId: unknown): Generator<OpenFile> {
  for (const paper of snapshot.of('papers', 'jobId', jobId)) {
    const name = safeName(`${number} ${paperKind(paper['kind'])} ${String(paper['revision'])}`)
    const place = `papers/${yearOf(number)}/${name}`
    const acceptances = snapshot.of('acceptances', 'paperId', paper['id'])
    const { bytes, sound } = snapshot.paperAsItLies(paper)
    const damaged = sound ? {} : { damaged: name }
    yield { place: `${place}.json`, pieces: [written({ papers: [paper], acceptances })], ...damaged }
    if (!sound) yield { place: `${place} is damaged.txt`, pieces: [damagedText(paper)] }
    if (bytes.length > 0) yield { place: `${place}.pdf`, pieces: [bytes] }
  }
}

function* jobFiles(snapshot: Snapshot): Generator<OpenFile> {
  const names = namesOf(snapshot.all('customers'), 'name')
  for (const job of snapshot.all('jobs')) {
    const number = String(job['number'])
    const name = safeName(`${number} ${names.get(job['customerId']) ?? ''}`)
    const rows: OpenRows = {
      jobs: [job],
      options: snapshot.of('options', 'jobId', job['id']),
      workDone: snapshot.of('workDone', 'jobId', job['id']),
      changes: snapshot.of('changes', 'jobId', job['id']),
    }
    yield { place: `jobs/${yearOf(number)}/${name}.json`, pieces: [written(rows)] }
    yield* paperFiles(snapshot, number, job['id'])
  }
}

function* rackFiles(snapshot: Snapshot): Generator<OpenFile> {
  let place = 0
  for (const rackPieces of inLists(snapshot.all('rackPieces'))) {
    const rackMoves = rackPieces.flatMap(({ id }) => snapshot.of('rackMoves', 'pieceId', id))
    yield { place: numbered('rack', place), pieces: [written({ rackPieces, rackMoves })] }
    place += 1
  }
}

function* orderFiles(snapshot: Snapshot): Generator<OpenFile> {
  for (const order of snapshot.all('orders')) {
    const lines = snapshot.of('orderLines', 'orderId', order['id'])
    const lengths = snapshot.of('orderLengths', 'orderId', order['id'])
    const rows: OpenRows = {
      orders: [order],
      orderJobs: snapshot.of('orderJobs', 'orderId', order['id']),
      orderLines: lines,
      orderReceipts: lines.flatMap(({ id }) => snapshot.of('orderReceipts', 'lineId', id)),
      orderLengths: lengths,
      orderCuts: lengths.flatMap(({ id }) => snapshot.of('orderCuts', 'lengthId', id)),
      orderRack: lengths.flatMap(({ id }) => snapshot.of('orderRack', 'lengthId', id)),
    }
    const number = String(order['number'])
    yield { place: `orders/${yearOf(number)}/${safeName(number)}.json`, pieces: [written(rows)] }
  }
}

function* everyFile(snapshot: Snapshot): Generator<OpenFile> {
  const rows = { settings: [...snapshot.all('settings')], sections: [...snapshot.all('sections')] }
  yield { place: 'settings.json', pieces: [written(rows)] }
  yield* customerFiles(snapshot)
  yield* priceFiles(snapshot)
  yield* jobFiles(snapshot)
  yield* rackFiles(snapshot)
  yield* orderFiles(snapshot)
}

/** How many files a book comes to, near enough to show how far the work is. */
export const filesExpected = (snapshot: Snapshot): number =>
  8 + snapshot.count('jobs') + 2 * snapshot.count('papers') + snapshot.count('orders')

/** Every file of a book taken out, one after another; what says what belongs to the folder comes last. The same book gives the same files. */
export function* bookFiles(snapshot: Snapshot): Generator<OpenFile> {
  const files: string[] = []
  const damaged: string[] = []
  yield { place: 'How to read this.txt', pieces: [aboutText] }
  for (const file of everyFile(snapshot)) {
    if (!/\.(pdf|txt)$/.test(file.place)) files.push(file.place)
    if (file.damaged !== undefined) damaged.push(file.place)
    yield file
  }
  const { layout } = snapshot
  const rows = Object.fromEntries(tablesIn(layout).map((table) => [table, snapshot.count(table)]))
  const contents = {
    format: bookFormat,
    version: formatVersion,
    layout,
    rows,
    files,
    ...(damaged.length > 0 && { damaged }),
  }
  yield { place: contentsName, pieces: [written(contents)] }
}
