import * as v from 'valibot'
import { stages } from '../job/job.ts'
import { mostNoteWords } from '../notes/note.ts'
import { longestSide } from '../notes/photograph.ts'
import { rackLeavings } from '../ordering/orderModel.ts'
import { priceUnits } from '../pricing/price.ts'
import * as c from './column.ts'
import * as frozen from './frozenShapes.ts'

/** A table of the book as it is written in open files: its columns in order, and which of them put its rows in order. */
export type Table = {
  columns: Readonly<Record<string, c.Column>>
  order: readonly string[]
  since?: number
  /** What lies beside a row as a file of its own. */
  files?: readonly RowFile[]
}

/** Bytes of a row that are a file of their own in a folder: the column they lie in, the one that holds their hash, and how their file's name ends. */
export type RowFile = { column: string; hash: string; ending: string }

const kinds = ['timber', 'ironmongery', 'fixing', 'finish', 'work']
const groups = ['timber', 'fixings', 'ironmongery', 'finish', 'making', 'hanging', 'extras']
const count = c.whole(1, 1_000_000)
const pence = c.whole(0, 1_000_000_000)
const anything = c.tree(v.unknown())
const object = v.looseObject({}, 'a set of entries')
const id = c.rowId
/** Taken back, so in no list, and kept. */
const putAway: c.Column = { ...c.flag, since: 6 }
const takenBackAt: c.Column = { ...c.orNothing(c.moment), since: 6 }

/**
 * Every table of the book, in an order in which what is pointed at comes first. What a table works out of its own columns isn't written,
 * nor is the index of words: both are made anew. A paper's bytes stand beside it as a file of their own, and so do a photograph's.
 */
export const tables = {
  settings: { order: ['key'], columns: { key: c.name, value: anything } },
  sections: {
    order: ['id'],
    columns: {
      ...{ id, use: c.oneOf('boards', 'ledges', 'braces'), name: c.name, species: c.name },
      ...{ thicknessMm: c.size, widthMm: c.size },
      ...{ tongueMm: c.orNothing(c.allowance), grooveMm: c.orNothing(c.allowance), source: c.text },
    },
  },
  usualGates: {
    order: ['id'],
    since: 5,
    columns: {
      ...{ id, name: c.name, unit: c.oneOf('mm', 'in') },
      spec: c.tree(object, frozen.gateProblems),
      keptAt: c.moment,
    },
  },
  customers: {
    order: ['id'],
    columns: {
      ...{ id, name: c.text, address: c.longText, town: c.text, phone: c.text, email: c.text },
      ...{ createdAt: c.moment, sample: c.flag },
    },
  },
  suppliers: {
    order: ['id'],
    columns: { id, name: c.name, phone: c.text, notes: c.longText, sample: c.flag, putAway },
  },
  items: {
    order: ['id'],
    columns: {
      id,
      kind: c.oneOf(...kinds),
      name: c.name,
      facts: c.tree(object),
      retired: c.flag,
      sample: c.flag,
      putAway,
    },
  },
  supplies: {
    order: ['itemId', 'supplierId'],
    columns: { itemId: id, supplierId: id, code: c.text, lengthsMm: c.tree(frozen.lengths), usual: c.flag },
  },
  rises: {
    order: ['id'],
    columns: {
      ...{ id, origin: c.name, addedAt: c.moment, lines: count },
      ...{ finishedAt: c.moment, undoneAt: c.orNothing(c.moment), sample: c.flag },
    },
  },
  prices: {
    order: ['id'],
    columns: {
      ...{
        id,
        itemId: id,
        supplierId: c.orNothing(id),
        unit: c.oneOf(...priceUnits),
        size: c.orNothing(c.size),
      },
      ...{ pricePence: pence, startsOn: c.day, riseId: id },
    },
  },
  jobs: {
    order: ['id'],
    columns: {
      ...{ id, number: c.jobNumber, customerId: id, title: c.text, stage: c.oneOf(...stages) },
      ...{ due: c.orNothing(c.day), notes: c.longText, unit: c.oneOf('mm', 'in') },
      entry: c.tree(frozen.gateEntry, frozen.gateEntryProblems),
      ...{ version: c.rowId, createdAt: c.moment, updatedAt: c.moment, sample: c.flag, putAway },
    },
  },
  changes: {
    order: ['id'],
    columns: { id, jobId: id, path: c.name, before: anything, after: anything, at: c.moment },
  },
  options: {
    order: ['id'],
    columns: {
      ...{ id, jobId: id, position: count, name: c.text },
      spec: { ...c.orNothing(c.tree(v.unknown(), frozen.optionSpecProblems)) },
      entry: c.tree(object, frozen.priceEntryProblems),
      version: c.rowId,
    },
  },
  workDone: {
    order: ['id'],
    columns: {
      ...{ id, jobId: id, what: c.oneOf('hours', 'timber', 'cost'), workGroup: c.oneOf(...groups) },
      ...{ operation: c.text, quantity: c.quantity, note: c.longText, doneOn: c.day, addedAt: c.moment },
    },
  },
  jobNotes: {
    since: 4,
    order: ['id'],
    columns: {
      ...{
        id,
        jobId: id,
        place: count,
        words: c.wordsOf(1, mostNoteWords),
        notedOn: c.day,
        notedAt: c.clock,
      },
      ...{ addedAt: c.moment, mendedAt: c.orNothing(c.moment), putAway: c.flag },
    },
  },
  photographs: {
    since: 4,
    order: ['id'],
    files: [
      { column: 'bytes', hash: 'sha256', ending: '.jpg' },
      { column: 'thumbnail', hash: 'thumbnailSha256', ending: ' small.jpg' },
    ],
    columns: {
      ...{ id, jobId: id, place: count, words: c.text, width: c.whole(1, longestSide) },
      ...{ height: c.whole(1, longestSide), addedAt: c.moment, putAway: c.flag },
      ...{ sha256: c.hash, thumbnailSha256: c.hash },
    },
  },
  papers: {
    order: ['id'],
    files: [{ column: 'bytes', hash: 'sha256', ending: '.pdf' }],
    columns: {
      ...{
        id,
        jobId: id,
        kind: c.oneOf('job-card', 'quotation'),
        revision: count,
        format: c.oneOf('a4', 'letter'),
      },
      ...{ issuedAt: c.moment, engine: c.text, pages: count, sha256: c.hash },
      header: c.tree(frozen.paperHeader),
      money: c.orNothing(c.tree(frozen.quotedMoney)),
      ...{ spec: c.tree(object), figures: c.tree(frozen.paperFigures), parts: c.tree(frozen.paperParts) },
    },
  },
  acceptances: {
    order: ['paperId'],
    columns: {
      ...{
        paperId: id,
        optionPlace: c.whole(0, 1000),
        acceptedOn: c.day,
        note: c.longText,
        addedAt: c.moment,
      },
    },
  },
  rackPieces: {
    order: ['id'],
    columns: {
      ...{
        id,
        itemId: id,
        lengthMm: c.size,
        place: c.text,
        jobId: c.orNothing(id),
        note: c.longText,
        addedOn: c.day,
      },
      ...{
        leftOn: c.orNothing(c.day),
        leftWhy: c.orNothing(c.oneOf(...rackLeavings)),
        sample: c.flag,
        putAway,
      },
    },
  },
  rackMoves: {
    order: ['id'],
    columns: {
      ...{ id, pieceId: id, what: c.oneOf('in', 'out', 'moved', 'measured', 'counted'), lengthMm: c.size },
      ...{ place: c.text, why: c.text, jobNumber: c.orNothing(c.jobNumber) },
      ...{ orderNumber: c.orNothing(c.orderNumber), movedOn: c.day, addedAt: c.moment },
    },
  },
  orders: {
    order: ['id'],
    columns: {
      ...{ id, number: c.orderNumber, placedOn: c.day, note: c.longText, costPence: pence },
      request: c.tree(object, frozen.buyRequestProblems),
      plan: c.tree(object, frozen.planProblems),
      ...{
        pairs: c.tree(frozen.pairs),
        addedAt: c.moment,
        cancelledAt: c.orNothing(c.moment),
        sample: c.flag,
      },
    },
  },
  orderJobs: {
    order: ['orderId', 'jobId'],
    columns: {
      ...{ orderId: id, jobId: id },
      stageBefore: c.orNothing(c.oneOf('enquiry', 'surveyed', 'designed', 'quoted')),
    },
  },
  orderLines: {
    order: ['id'],
    columns: {
      ...{ id, orderId: id, itemId: id, supplierId: c.orNothing(id), priceId: id, lengthMm: c.size, count },
      pricePence: pence,
    },
  },
  orderReceipts: {
    order: ['id'],
    columns: { id, lineId: id, count, receivedOn: c.day, addedAt: c.moment, takenBackAt },
  },
  orderLengths: {
    order: ['id'],
    columns: {
      ...{ id, orderId: id, itemId: id, source: c.oneOf('merchant', 'rack'), lengthMm: c.size, count },
      ...{ cuts: c.tree(frozen.cuts), offcutMm: c.allowance, leftFrom: c.orNothing(id) },
    },
  },
  orderCuts: {
    order: ['id'],
    columns: { id, lengthId: id, count, cutOn: c.day, addedAt: c.moment, takenBackAt },
  },
  orderRack: { order: ['lengthId', 'pieceId'], columns: { lengthId: id, pieceId: id } },
} as const satisfies Record<string, Table>

export type TableName = keyof typeof tables

/** Tables that stay with the book they were written in, by their names there: what can be taken back is told by what stood in its very rows. */
export const staysHome: readonly string[] = ['deeds']

export const tableNames = Object.keys(tables) as TableName[]

/** A table by its name, as one shape for all. */
export const tableOf = (name: TableName): Table => tables[name]

/** What lies beside each row of a table as files of their own. */
export const filesOf = (name: TableName): readonly RowFile[] => tableOf(name).files ?? []

/** The columns a table had in a layout of the book. */
export const columnsIn = (name: TableName, layout: number): [string, c.Column][] =>
  Object.entries(tableOf(name).columns).filter(([, { since = 1 }]) => since <= layout)

/** The tables a layout of the book had. */
export const tablesIn = (layout: number): TableName[] =>
  tableNames.filter((name) => (tableOf(name).since ?? 1) <= layout)

/** A row as it stands in an open file: what it holds under each column. */
export type OpenRow = Record<string, unknown>

/** Rows by the table they belong to. */
export type OpenRows = Partial<Record<TableName, OpenRow[]>>
