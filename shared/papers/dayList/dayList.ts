import { headerHeight } from '../cardHeader.ts'
import { flow } from '../flow.ts'
import { plainMeasure } from '../measure.ts'
import { margins, paperSizes, type Measure, type PaperDocument } from '../page.ts'
import { paperDate } from '../paperDate.ts'
import { sheetHead } from '../sheetHead.ts'
import { dayBlocks } from './dayBlocks.ts'
import type { DayListInput } from './dayListInput.ts'

/**
 * What is cut today over several jobs, as pages in mm: the jobs and how much there is, the cautions at the saw, then every piece by how the saw
 * stands and by section with a box to tick, and the boards that go along the fence. Lengths to cut are blanks, the finished ones beside them.
 */
export function dayList(input: DayListInput, measure: Measure = plainMeasure): PaperDocument {
  const { format, workshop, day } = input
  const sheet = paperSizes[format]
  const frame = { x: margins.left, top: margins.top + headerHeight, bottom: sheet.height - margins.bottom }
  const width = sheet.width - margins.left - margins.right
  const pages = flow(dayBlocks(input, { width, measure }), { ...frame }, frame)
  const head = { number: '', name: 'Workshop day list', when: paperDate(day), more: workshop, format }
  return {
    title: `Workshop day list ${day}`,
    issuedAt: `${day}T00:00:00.000Z`,
    pages: pages.map((marks, i) => ({
      ...sheet,
      marks: [...sheetHead({ ...head, page: i + 1, pages: pages.length }, measure), ...marks],
    })),
  }
}
