import type { JobCardInput } from '../jobCardInput.ts'
import { plainMeasure } from '../measure.ts'
import type { Measure, Page, PaperDocument } from '../page.ts'
import { labelLayout, labelsOn, type LabelChoice, type LabelLayout } from './labelLayouts.ts'
import { labelledParts, scannedWords } from './labelledParts.ts'
import { oneLabel, type LabelInput, type LabelPlace } from './oneLabel.ts'
import { partPlaces } from './partPlace.ts'

/** What labels are printed on where nothing is said. */
const usualLabels: LabelChoice = { sheet: '24', start: 1 }

function labelsOf(input: JobCardInput, { sheet }: LabelChoice): LabelInput[] {
  const { header } = input
  const placeOf = partPlaces(input, sheet !== '40')
  const customer = header.customer.name.trim()
  const title = header.title.trim()
  return labelledParts(input).map(({ key, ...part }) => ({
    number: header.number,
    name: customer === '' ? title : customer,
    part,
    scanned: scannedWords(header, part.mark),
    place: placeOf(key),
  }))
}

/** The place of a label on its sheet, counted from 0 along the rows. */
function placeAt({ left, top, across, width, height }: LabelLayout, index: number): LabelPlace {
  const row = Math.floor(index / across)
  return { x: left + (index % across) * width, y: top + row * height, width, height }
}

/**
 * A label for every piece of the cut list, in its order, on sheets or a roll. They carry no head and no draft's mark: a label is stuck on a
 * piece and thrown away with its offcut. Throws RangeError for a first label that the sheet hasn't got.
 */
export function partLabels(input: JobCardInput, measure: Measure = plainMeasure): PaperDocument {
  const { header, format, labels = usualLabels } = input
  const layout = labelLayout(labels.sheet, format)
  const most = labelsOn(labels.sheet)
  const start = labels.sheet === 'roll' ? 1 : labels.start
  if (!Number.isInteger(start) || start < 1 || start > most)
    throw new RangeError(`a first label from 1 to ${most} is accepted, got ${labels.start}`)
  const pages: Page[] = []
  labelsOf(input, labels).forEach((label, i) => {
    const at = i + start - 1
    const page = (pages[Math.floor(at / most)] ??= { ...layout.page, marks: [] })
    page.marks.push(...oneLabel(label, placeAt(layout, at % most), measure))
  })
  return {
    title: header.number === '' ? header.title : `${header.number} part labels`,
    issuedAt: header.issuedAt,
    pages,
  }
}
