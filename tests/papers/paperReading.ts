import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { paintPdf } from '../../electron/paintPdf.ts'
import { loadFonts } from '../../electron/fonts.ts'
import { measureWith } from '../../electron/paint/wordRuns.ts'
import type { Measure, PaperDocument } from '../../shared/papers/page.ts'

const fonts = await loadFonts()

/** Measures with the faces that papers are printed in. */
export const printedMeasure: Measure = measureWith(fonts)

export const painted = (paper: PaperDocument): Promise<Uint8Array> => paintPdf(paper, fonts)

export const opened = (bytes: Uint8Array) =>
  getDocument({ data: bytes.slice(), verbosity: 0, disableFontFace: true }).promise

type OpenedPdf = Awaited<ReturnType<typeof opened>>

/** Every run of words of a printed paper as another program reads it, page by page. */
export async function readBack(paper: PaperDocument): Promise<string[][]> {
  const pdf = await opened(await painted(paper))
  const pages = await Promise.all(
    Array.from({ length: pdf.numPages }, async (_, i) => (await pdf.getPage(i + 1)).getTextContent()),
  )
  return pages.map(({ items }) =>
    items.flatMap((item) => ('str' in item && item.str.trim() !== '' ? [item.str.trim()] : [])),
  )
}

type Canvas = { canvas: HTMLCanvasElement; context: CanvasRenderingContext2D }

/** A page as pixels, so many to a millimetre. */
export async function pixels(pdf: OpenedPdf, number: number, fine: number): Promise<ImageData> {
  const page = await pdf.getPage(number)
  const viewport = page.getViewport({ scale: (fine * 25.4) / 72 })
  const [width, height] = [Math.ceil(viewport.width), Math.ceil(viewport.height)]
  const factory = pdf.canvasFactory as { create: (width: number, height: number) => Canvas }
  const { canvas, context } = factory.create(width, height)
  await page.render({ canvas, canvasContext: context, viewport }).promise
  return context.getImageData(0, 0, width, height)
}

/** Bytes of a paper made in each of five time zones. */
export async function bytesByZone(make: () => PaperDocument): Promise<Buffer[]> {
  const before = process.env['TZ']
  const made: Buffer[] = []
  try {
    for (const zone of [
      'Europe/London',
      'Pacific/Kiritimati',
      'America/Los_Angeles',
      'Asia/Kolkata',
      'Pacific/Pago_Pago',
    ]) {
      process.env['TZ'] = zone
      made.push(Buffer.from(await painted(make())))
    }
  } finally {
    if (before === undefined) delete process.env['TZ']
    else process.env['TZ'] = before
  }
  return made
}
