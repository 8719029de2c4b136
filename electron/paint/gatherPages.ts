import { setImmediate as turn } from 'node:timers/promises'
import type { PDFDocument } from 'pdf-lib'
import { mmOfPoint } from '../../shared/papers/page.ts'

/** A paper's bytes, and which of its pages (from 1); left out, all of them. */
export type PagesWanted = { bytes: Uint8Array; pages?: readonly number[] }

/** What the gathered paper says of itself. copies: how many the print window is asked to start with. */
export type Gathering = { title: string; copies: number; stopped?: () => boolean }

const load = async (bytes: Uint8Array): Promise<PDFDocument> => {
  const { PDFDocument } = await import('pdf-lib')
  // The reader would rest on a timer after every hundred objects; one paper is read in less than a rest is worth.
  return PDFDocument.load(bytes, { updateMetadata: false, parseSpeed: Infinity })
}

/** Objects written before the window has its turn again: a few thousandths of a second. */
const writtenAtOnce = 500

/**
 * One paper of the very pages of others, in the order given: their contents, faces and pictures are carried over as they are, nothing is drawn
 * anew. The same pages give the same bytes. The window has its turn after each paper; undefined once `stopped` says so.
 */
export async function gatherPages(
  papers: readonly PagesWanted[],
  { title, copies, stopped = () => false }: Gathering,
): Promise<{ bytes: Uint8Array; pages: number } | undefined> {
  const { PDFDocument, PrintScaling } = await import('pdf-lib')
  const gathered = await PDFDocument.create({ updateMetadata: false })
  gathered.setTitle(title, { showInWindowTitleBar: true })
  gathered.setProducer('Bracework')
  gathered.setLanguage('en-GB')
  const wishes = gathered.catalog.getOrCreateViewerPreferences()
  wishes.setPrintScaling(PrintScaling.None)
  if (copies > 1) wishes.setNumCopies(copies)
  for (const { bytes, pages } of papers) {
    if (stopped()) return undefined
    const from = await load(bytes)
    const wanted = pages?.map((page) => page - 1) ?? from.getPageIndices()
    for (const page of await gathered.copyPages(from, wanted)) gathered.addPage(page)
    await turn()
  }
  const made = await gathered.save({ useObjectStreams: true, objectsPerTick: writtenAtOnce })
  return stopped() ? undefined : { bytes: made, pages: gathered.getPageCount() }
}

/** What a paper is called in itself, how many pages it has, and the size of its first, mm. */
export async function lookAtPaper(bytes: Uint8Array): Promise<{
  title: string
  pages: number
  width: number
  height: number
}> {
  const paper = await load(bytes)
  const { width, height } = paper.getPage(0).getSize()
  return {
    title: paper.getTitle() ?? '',
    pages: paper.getPageCount(),
    width: width * mmOfPoint,
    height: height * mmOfPoint,
  }
}
