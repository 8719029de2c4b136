import { standardSections } from '../../shared/gate/standardSpec.ts'
import type { Section } from '../../shared/gate/spec.ts'
import type { Book } from '../open.ts'
import { atOnce } from '../prices.ts'
import { dayFrom } from './dayFrom.ts'
import { larchBoards, oakBoards, stoutBraces, stoutLedges } from './sampleTimber.ts'

/** A piece of the made-up rack, mm; leftFrom: the title of the sample job that it is left over from; ago: days since. */
type SamplePiece = {
  section: Section
  length: number
  place: string
  leftFrom?: string
  ago: number
  note?: string
}

const { boards, ledges, braces } = standardSections
const wall = 'long wall, upper arms'
const corner = 'standing in the corner'

const samplePieces: SamplePiece[] = [
  { section: boards, length: 1862, place: wall, leftFrom: 'Side gate', ago: 71 },
  { section: boards, length: 1240, place: wall, leftFrom: 'Side gate', ago: 71 },
  { section: boards, length: 1240, place: wall, leftFrom: 'Meter cupboard door', ago: 52 },
  {
    section: boards,
    length: 655,
    place: corner,
    leftFrom: 'Meter cupboard door',
    ago: 52,
    note: 'knot near one end',
  },
  { section: ledges, length: 1108, place: 'long wall, lower arms', leftFrom: 'Side gate', ago: 71 },
  { section: ledges, length: 942.5, place: 'long wall, lower arms', ago: 140, note: 'good for one ledge' },
  { section: braces, length: 1575, place: corner, leftFrom: 'Meter cupboard door', ago: 52 },
  { section: stoutLedges, length: 1330, place: 'long wall, lower arms', ago: 140 },
  { section: stoutBraces, length: 780, place: corner, ago: 140 },
  {
    section: larchBoards,
    length: 2015,
    place: 'under the bench',
    ago: 33,
    note: 'a little grey on one face',
  },
  { section: oakBoards, length: 1190, place: 'under the bench', ago: 210 },
]

/** Puts invented offcuts on the rack, marked as samples. To be called inside one writing, once the sample's prices and jobs are in. */
export function fillSampleRack(
  book: Book,
  today: string,
  jobs: readonly { id: number; title: string }[],
): void {
  const { items } = atOnce(book.prices.lineSteps())
  for (const { section, length, place, leftFrom, ago, note = '' } of samplePieces) {
    const item = items.find(({ kind, name, sample }) => kind === 'timber' && sample && name === section.name)
    if (!item) throw new Error(`the sample's prices hold no '${section.name}'`)
    const jobId = jobs.find(({ title }) => title === leftFrom)?.id ?? null
    book.rack.add({
      ...{ itemId: item.id, length, place, jobId, note },
      addedOn: dayFrom(today, -ago),
      sample: true,
    })
  }
}
