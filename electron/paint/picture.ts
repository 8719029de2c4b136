import type { PDFDocument, PDFImage } from 'pdf-lib'
import type { PagePicture, PaperDocument } from '../../shared/papers/page.ts'
import { points, type Sheet } from './sheet.ts'

/** The pictures of a paper that are in the document, by their bytes in base64. */
export type Pictures = ReadonlyMap<string, PDFImage>

async function embed(document: PDFDocument, { format, base64 }: PagePicture): Promise<PDFImage> {
  const bytes = Buffer.from(base64, 'base64')
  try {
    return await (format === 'png' ? document.embedPng(bytes) : document.embedJpg(bytes))
  } catch (cause) {
    throw new RangeError('the picture can’t be read as a PNG or JPEG', { cause })
  }
}

/** Puts each picture of a paper into the document once. Rejects with RangeError on one that can't be read. */
export async function embedPictures(document: PDFDocument, paper: PaperDocument): Promise<Pictures> {
  const embedded = new Map<string, PDFImage>()
  for (const mark of paper.pages.flatMap((page) => page.marks))
    if (mark.kind === 'picture' && !embedded.has(mark.base64))
      embedded.set(mark.base64, await embed(document, mark))
  return embedded
}

/** A picture in its box. Throws when it isn't in the document. */
export function paintPicture(sheet: Sheet, mark: PagePicture): void {
  const { pdf, page, out, height } = sheet
  const image = sheet.pictures.get(mark.base64)
  if (!image) throw new Error('the picture isn’t in the document')
  const key = page.node.newXObject('Picture', image.ref)
  out.push(
    pdf.pushGraphicsState(),
    pdf.concatTransformationMatrix(
      points(mark.width),
      0,
      0,
      points(mark.height),
      points(mark.x),
      points(height - mark.y - mark.height),
    ),
    pdf.drawObject(key),
    pdf.popGraphicsState(),
  )
}
