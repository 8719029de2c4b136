import type { PDFDocumentProxy, PDFWorker } from 'pdfjs-dist'

/** A page's size as printed, mm. */
export type PageSize = { width: number; height: number }

/** A paper open for looking at: its pages, each painted from the very bytes that will be printed. Pages count from 1. */
export type OpenPaper = {
  pages: number
  sizeOf: (page: number) => Promise<PageSize>
  /** Paints a page so many pixels wide on a fresh canvas; undefined when it was broken off meanwhile. */
  paint: (
    page: number,
    pixels: number,
  ) => { canvas: Promise<HTMLCanvasElement | undefined>; breakOff: () => void }
  close: () => void
}

const mmOfPoint = 25.4 / 72

/** Makes a thing once, when it is first wanted; a failure isn't kept. */
function once<T>(make: () => Promise<T>): () => Promise<T> {
  const kept: { made?: Promise<T> } = {}
  return () => {
    kept.made ??= make().catch((error: unknown) => {
      delete kept.made
      throw error
    })
    return kept.made
  }
}

type Reader = { library: typeof import('pdfjs-dist'); worker: PDFWorker }

/** The reader of papers and its worker, for every paper that is ever shown. Some 0.5 MB, so it stays out of the first screen. */
const reader = once(async (): Promise<Reader> => {
  const library = await import('pdfjs-dist')
  const port = new Worker(new URL('./pageWorker.ts', import.meta.url), { type: 'module' })
  const worker = library.PDFWorker.create({ port })
  await worker.promise
  return { library, worker }
})

/** Has the reader loaded before the first paper comes. A failure shows when a paper is opened. */
export const warmReader = (): void => void reader().catch(() => undefined)

function paintPage(paper: PDFDocumentProxy, page: number, pixels: number): ReturnType<OpenPaper['paint']> {
  const state: { broken: boolean; cancel: () => void } = { broken: false, cancel: () => undefined }
  const paint = async () => {
    const found = await paper.getPage(page)
    if (state.broken) return undefined
    const scale = pixels / found.getViewport({ scale: 1 }).width
    const viewport = found.getViewport({ scale })
    const canvas = document.createElement('canvas')
    canvas.width = Math.round(viewport.width)
    canvas.height = Math.round(viewport.height)
    const task = found.render({ canvas, viewport, background: '#ffffff' })
    state.cancel = () => task.cancel()
    try {
      await task.promise
      return canvas
    } catch (error) {
      if (state.broken) return undefined
      throw error
    }
  }
  return {
    canvas: paint(),
    breakOff: () => {
      state.broken = true
      state.cancel()
    },
  }
}

/** Opens a paper's bytes. Rejects where they are no paper. Close it when it is no longer looked at. */
export async function openPaper(bytes: Uint8Array): Promise<OpenPaper> {
  const { library, worker } = await reader()
  // The reader takes what it is given; the bytes shown stay the window's own.
  const loading = library.getDocument({ data: bytes.slice(), worker, disableWorkerRendering: true })
  const paper = await loading.promise
  return {
    pages: paper.numPages,
    sizeOf: async (page) => {
      const { width, height } = (await paper.getPage(page)).getViewport({ scale: 1 })
      return { width: width * mmOfPoint, height: height * mmOfPoint }
    },
    paint: (page, pixels) => paintPage(paper, page, pixels),
    close: () => void loading.destroy(),
  }
}
