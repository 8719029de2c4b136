import { calledIn, describeGate } from '../../describe/describeGate.ts'
import type { Business } from '../../pricing/shapes.ts'
import { flow, type Block } from '../flow.ts'
import { draftMark } from '../cardHeader.ts'
import { plainMeasure } from '../measure.ts'
import { margins, paperSizes, type Measure, type PaperDocument } from '../page.ts'
import { letterFrame, prose, words } from '../quotationLook.ts'
import { letterhead } from '../quotationHead.ts'
import { fitWords } from '../words.ts'
import { writeLine } from '../writeLine.ts'
import type { JobCardInput } from '../jobCardInput.ts'
import { careParts, type CarePart } from './careWords.ts'

/**
 * How full the note is: type size, points, the space over a heading and between sentences, mm, and how many sentences tell what was made.
 */
type Look = { size: number; over: number; between: number; sentences: number }

const spacings = [
  { size: 11.5, over: 4.6, between: 1.3 },
  { size: 11, over: 3.4, between: 0.8 },
  { size: 11, over: 2.4, between: 0.3 },
]

/** The fullest first; the note keeps to one page, so the closest set one leaves out the last particulars of what was made. */
const looks: Look[] = [
  ...spacings.map((spacing) => ({ ...spacing, sentences: Infinity })),
  ...[12, 11, 10, 9, 8, 7, 6, 5, 4, 3, 2].map((sentences) => ({
    size: 11,
    over: 2.4,
    between: 0.3,
    sentences,
  })),
]

/** A workshop that has told nothing of itself. */
const noBusiness: Business = {
  address: '',
  phone: '',
  email: '',
  website: '',
  terms: '',
  included: '',
  notIncluded: '',
  logo: null,
}

type Room = { width: number; measure: Measure }

const title = (text: string, over: number): Block => ({
  height: 5.6,
  above: over,
  withNext: true,
  marks: (x, y) => [words(text, { x, y: y + 4.2 }, { size: 13, weight: 'semibold' })],
})

const partBlocks = (
  { title: text, words: said }: CarePart,
  look: Look,
  { width, measure }: Room,
): Block[] => [
  title(text, look.over),
  ...said.flatMap((sentence) =>
    prose(sentence, { width, measure, size: look.size, above: look.between, indent: 4, mark: '–' }),
  ),
]

/** Whose gate it is, under what the paper is called; the day it is handed over is written by hand. */
function headBlock({ header, spec }: JobCardInput, { width, measure }: Room): Block {
  const called = spec.stable ? 'door' : calledIn(header.title)
  const { name, town } = header.customer
  const whose = [
    name.trim() === '' ? '' : `for ${name.trim()}`,
    town.trim(),
    header.title.trim(),
    header.number,
  ]
  const text = whose.filter((part) => part !== '').join(' · ')
  const fitted = fitWords(text, { width, most: 12, least: 11, weight: 'regular' }, measure)
  return {
    height: 14,
    above: 4,
    withNext: true,
    marks: (x, y) => [
      words(
        `Looking after your ${called}${spec.leaves === 2 ? 's' : ''}`,
        { x, y: y + 6 },
        { size: 18, weight: 'semibold' },
      ),
      words(fitted.text, { x, y: y + 12.4 }, { size: fitted.size }),
    ],
  }
}

/** What was made, in the words it was offered in; its finish stands further down. */
function madeBlocks(input: JobCardInput, look: Look, { width, measure }: Room): Block[] {
  const { spec, design, unit, header } = input
  const told = describeGate({ spec, design, unit, called: calledIn(header.title) })
  // What an offer leaves out is no part of what was made.
  const said = told.filter((sentence) => !/ not included\.$/.test(sentence)).slice(0, look.sentences)
  return [
    title('What we made', look.over),
    ...prose(said.join(' '), { width, measure, size: look.size, above: look.between }),
  ]
}

/** Room to write a finish in where none is known, and to sign that it was handed over. */
function closeBlocks({ handover }: JobCardInput, look: Look, room: Room): Block[] {
  const write = (fields: Parameters<typeof writeLine>[0]): Block => writeLine(fields, room.width)
  const phone = handover?.business.phone.trim() ?? ''
  const ring = phone === '' ? 'tell us' : `ring us on ${phone}`
  return [
    ...prose(`If anything isn’t as it should be, ${ring}.`, { ...room, size: look.size, above: look.over }),
    ...(handover?.finish === undefined
      ? [
          write([
            { label: 'Finish and colour, if one was put on', share: 0.6 },
            { label: 'renew by', share: 0.4 },
          ]),
        ]
      : []),
    write([
      { label: 'Handed over by', share: 0.36 },
      { label: 'Received by', share: 0.36 },
      { label: 'Date', share: 0.28 },
    ]),
  ]
}

/**
 * The note that stays with the customer when the gate is handed over, on one page: the workshop's letterhead, what was made and of what timber,
 * how it moves, its finish, hinges and fixings, what to be careful of, and the place to sign. It says of the timber only what is known of it.
 */
export function careNote(input: JobCardInput, measure: Measure = plainMeasure): PaperDocument {
  const { header, handover, format, draft } = input
  const business = handover?.business ?? noBusiness
  const sheet = paperSizes[format]
  const { left, top, width } = letterFrame(format)
  const room = { width, measure }
  const frame = { x: left, top, bottom: sheet.height - margins.bottom }
  const made = looks.map((look) =>
    flow(
      [
        letterhead(header.workshop, business, room),
        headBlock(input, room),
        ...madeBlocks(input, look, room),
        ...careParts(input).flatMap((part) => partBlocks(part, look, room)),
        ...closeBlocks(input, look, room),
      ],
      { ...frame },
      frame,
    ),
  )
  const pages = made.find((one) => one.length === 1) ?? made.at(-1) ?? []
  return {
    title: header.number === '' ? header.title : `${header.number} care and handover`,
    issuedAt: header.issuedAt,
    pages: pages.map((marks) => ({ ...sheet, marks: [...(draft ? [draftMark(format)] : []), ...marks] })),
  }
}
