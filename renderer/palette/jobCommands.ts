import type { JobPart, Place, PriceSheet } from '../stores/place.ts'
import type { Command } from './command.ts'
import type { Lead } from './leadTo.ts'

/** Something done with a job. verb: its words beside a job's name; at: the part of it, or making an order for it; lead: the very thing there. */
type JobDeed = {
  id: string
  says: string
  verb: string
  also: string
  at?: { part: JobPart; sheet?: PriceSheet } | 'order'
  lead?: Lead
}

/** A figure of the drawing that is an entry: pressed, it is written anew where it stands. Where it is worked out from the opening, that is what is entered. */
const onDrawing = (field: string): Lead => ({
  press: `[data-view="large"] [data-entry="${field}"]`,
  instead: `[data-field="${field}"], [data-field="${field}s.0"]`,
})

const quotations = { part: 'price', sheet: 'quotations' } as const
const estimate = { part: 'price', sheet: 'estimate' } as const

const deeds: JobDeed[] = [
  {
    ...{ id: 'gate', says: 'This job: its gate', verb: 'Gate', also: 'drawing sizes design' },
    at: { part: 'gate' },
  },
  {
    ...{ id: 'width', says: 'This job: change its width on the drawing', verb: 'Change the width' },
    ...{ also: 'size wider narrower drawing', at: { part: 'gate' }, lead: onDrawing('size.width') },
  },
  {
    ...{ id: 'height', says: 'This job: change its height on the drawing', verb: 'Change the height' },
    ...{ also: 'size higher lower drawing', at: { part: 'gate' }, lead: onDrawing('size.height') },
  },
  {
    ...{ id: 'measure', says: 'This job: measure its opening', verb: 'Measure the opening' },
    ...{ also: 'survey sizes widths heights', at: { part: 'gate' } },
    lead: {
      press: '[data-lead="measure"] [value="opening"], .gate-form [value="opening"]:checked',
      to: '[data-field="size.widths.0"]',
      // Sizes of the leaf would go: whoever means that presses it.
      instead: '.gate-form [value="opening"]:not(:checked)',
    },
  },
  {
    ...{ id: 'price', says: 'This job: its price', verb: 'Price', also: 'estimate cost' },
    at: { part: 'price' },
  },
  {
    ...{ id: 'own-line', says: 'This job: add a line to its price', verb: 'Add a line to the price' },
    ...{ also: 'extra delivery estimate own', at: estimate, lead: { press: '[data-lead="own-line"]' } },
  },
  {
    ...{ id: 'labour', says: 'This job: its hours in the price', verb: 'Hours in the price' },
    ...{ also: 'labour minutes work making time', at: estimate },
    lead: { to: '[data-line^="making."] input' },
  },
  {
    ...{ id: 'quote', says: 'This job: issue its quotation', verb: 'Issue the quotation' },
    ...{ also: 'quote send', at: quotations, lead: { to: '[data-lead="issue"]' } },
  },
  {
    ...{ id: 'quotations', says: 'This job: its quotations', verb: 'Quotations', also: 'quote send' },
    at: quotations,
  },
  {
    ...{ id: 'accept', says: 'This job: accept its quotation', verb: 'Accept the quotation' },
    ...{ also: 'yes quote agreed', at: quotations, lead: { press: '[data-lead="accept"]' } },
  },
  {
    ...{ id: 'order-for', says: 'This job: order its timber', verb: 'Order the timber' },
    ...{ also: 'buy merchant lengths wood', at: 'order', lead: { to: '[data-plan]' } },
  },
  {
    ...{ id: 'papers', says: 'This job: its papers', verb: 'Papers', also: 'card labels' },
    at: { part: 'papers' },
  },
  {
    ...{ id: 'issue', says: 'This job: issue its card', verb: 'Issue the card', also: 'paper' },
    ...{ at: { part: 'papers' }, lead: { to: '[data-lead="issue"]' } },
  },
  {
    ...{ id: 'print', says: 'This job: print its card', verb: 'Print the card' },
    ...{ also: 'reprint old paper', at: { part: 'papers' }, lead: { to: '[data-lead="print"]' } },
  },
  {
    ...{ id: 'customer', says: 'This job: its customer', verb: 'Customer', also: 'phone address due' },
    at: { part: 'customer' },
  },
  {
    ...{ id: 'notes', says: 'This job: its notes', verb: 'Notes', also: 'photographs log happened' },
    at: { part: 'notes' },
  },
  {
    ...{ id: 'again', says: 'Make this gate again', verb: 'Make the same again', also: 'repeat copy same' },
  },
]

function placeOf(at: NonNullable<JobDeed['at']>, id: number): Place {
  return at === 'order' ? { name: 'timber', sheet: 'make', job: id } : { name: 'job', id, ...at }
}

/** What can be done with a job. */
export const ofJob = (job: number): Command[] =>
  deeds.map(({ at, lead, ...named }) => ({
    ...named,
    job,
    ...(at ? { go: placeOf(at, job) } : { does: 'again' as const }),
    ...(lead ? { lead } : {}),
  }))
