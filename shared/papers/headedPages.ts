import { cardHeader, draftMark } from './cardHeader.ts'
import type { JobCardInput } from './jobCardInput.ts'
import { paperSizes, type Measure, type PageMark, type PaperDocument } from './page.ts'

/** Pages under their headers as a paper: paper is what it is called ('job card'); pages hold the marks under each header. */
export function headedPages(
  { header, draft, format }: Pick<JobCardInput, 'header' | 'draft' | 'format'>,
  { paper, pages }: { paper: string; pages: PageMark[][] },
  measure: Measure,
): PaperDocument {
  const sheet = paperSizes[format]
  return {
    title: header.number === '' ? header.title : `${header.number} ${paper}`,
    issuedAt: header.issuedAt,
    pages: pages.map((marks, i) => ({
      ...sheet,
      marks: [
        ...(draft ? [draftMark(format)] : []),
        ...cardHeader({ header, paper, draft, format, page: i + 1, pages: pages.length }, measure),
        ...marks,
      ],
    })),
  }
}
