import type { PDFDocumentProxy } from 'pdfjs-dist'

/** Pixels to a millimetre when a page is looked at. */
const fine = 6

type Canvas = { canvas: HTMLCanvasElement; context: CanvasRenderingContext2D }

/** Where a page's ink begins, mm in from each edge, read off its pixels; dark counts those that are nearly black. */
export async function inkBounds(pdf: PDFDocumentProxy, number: number) {
  const page = await pdf.getPage(number)
  const viewport = page.getViewport({ scale: (fine * 25.4) / 72 })
  const [width, height] = [Math.ceil(viewport.width), Math.ceil(viewport.height)]
  const factory = pdf.canvasFactory as { create: (width: number, height: number) => Canvas }
  const { canvas, context } = factory.create(width, height)
  await page.render({ canvas, canvasContext: context, viewport }).promise
  const { data } = context.getImageData(0, 0, width, height)
  const ink = { left: width, top: height, right: 0, bottom: 0, dark: 0 }
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const at = (y * width + x) * 4
      const light = ((data[at] ?? 255) + (data[at + 1] ?? 255) + (data[at + 2] ?? 255)) / 3
      if (light > 200) continue
      if (light < 90) ink.dark++
      ink.left = Math.min(ink.left, x)
      ink.top = Math.min(ink.top, y)
      ink.right = Math.max(ink.right, x + 1)
      ink.bottom = Math.max(ink.bottom, y + 1)
    }
  return {
    left: ink.left / fine,
    top: ink.top / fine,
    right: (width - ink.right) / fine,
    bottom: (height - ink.bottom) / fine,
    dark: ink.dark,
  }
}
