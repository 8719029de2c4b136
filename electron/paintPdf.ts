import type { PDFDocument, PDFFont } from 'pdf-lib'
import { layOut } from '../shared/drawing/layOut.ts'
import { pens } from '../shared/drawing/pens.ts'
import type { Primitive, TextPrimitive } from '../shared/drawing/primitives.ts'
import type { Point } from '../shared/geometry/point.ts'
import {
  mmOfPoint,
  type Page,
  type PageBox,
  type PageDrawing,
  type PageMark,
  type PaperDocument,
} from '../shared/papers/page.ts'
import { withoutIsolation } from '../shared/papers/isolateNames.ts'
import { loadFonts, type Face, type PaperFonts } from './fonts.ts'
import {
  paintCircle,
  paintPath,
  paintWords,
  points,
  type Pdf,
  type Sheet,
  type Stroke,
  type Words,
} from './paint/sheet.ts'
import { fills, inks, penInk } from './paint/inks.ts'
import { embedPictures, paintPicture, type Pictures } from './paint/picture.ts'
import { wordRuns } from './paint/wordRuns.ts'
import { openFaces } from './paint/openFaces.ts'

/** A drawing laid out on its box, its scale written beside its title unless it goes without. */
const laidOut = ({ drawing, width, height, scale, unscaled }: PageDrawing) =>
  layOut(drawing, { width, height, scale, ...(unscaled ? {} : { caption: `1 : ${scale}` }) })

const strokeOf = (pen: keyof typeof pens | undefined): Stroke | undefined =>
  pen === undefined ? undefined : { ...pens[pen], colour: penInk(pen) }

function paintPrimitive(sheet: Sheet, primitive: Primitive, at: Point): void {
  const moved = ([x, y]: Point): Point => [x + at[0], y + at[1]]
  switch (primitive.kind) {
    case 'path':
      return paintPath(sheet, {
        points: [primitive.points.map(moved)],
        closed: primitive.closed,
        fill: primitive.fill === 'none' ? undefined : fills[primitive.fill],
        stroke: strokeOf(primitive.pen),
      })
    case 'strokes':
      return paintPath(sheet, {
        points: primitive.lines.map((line) => line.map(moved)),
        closed: false,
        stroke: strokeOf(primitive.pen),
      })
    case 'circle':
      return paintCircle(sheet, {
        centre: moved(primitive.centre),
        radius: primitive.radius,
        fill: primitive.fill === 'none' ? undefined : fills[primitive.fill],
        stroke: strokeOf(primitive.pen),
      })
    case 'text':
      return paintWords(sheet, drawnWords(primitive, at))
  }
}

const drawnWords = (text: TextPrimitive, at: Point): Words => ({
  ...text,
  x: text.x + at[0],
  y: text.y + at[1],
  size: text.size / mmOfPoint,
  colour: inks.black,
})

function paintDrawing(sheet: Sheet, mark: PageDrawing): void {
  for (const primitive of laidOut(mark).primitives) paintPrimitive(sheet, primitive, [mark.x, mark.y])
}

function paintBox(sheet: Sheet, { x, y, width, height, fill, stroke }: PageBox): void {
  const [x2, y2] = [x + width, y + height]
  paintPath(sheet, {
    points: [
      [
        [x, y],
        [x2, y],
        [x2, y2],
        [x, y2],
      ],
    ],
    closed: true,
    fill: fill && inks[fill],
    stroke: stroke && { width: stroke.width, dash: [], colour: inks[stroke.ink] },
  })
}

function paintMark(sheet: Sheet, mark: PageMark): void {
  switch (mark.kind) {
    case 'text':
      return paintWords(sheet, { ...mark, angle: mark.angle ?? 0, colour: inks[mark.ink] })
    case 'line':
      return paintPath(sheet, {
        points: [
          [
            [mark.x1, mark.y1],
            [mark.x2, mark.y2],
          ],
        ],
        closed: false,
        stroke: { width: mark.width, dash: mark.dash ?? [], colour: inks[mark.ink] },
      })
    case 'path':
      return paintPath(sheet, {
        points: [mark.points],
        closed: mark.closed,
        stroke: { width: mark.width, dash: mark.dash ?? [], colour: inks[mark.ink] },
      })
    case 'box':
      return paintBox(sheet, mark)
    case 'drawing':
      return paintDrawing(sheet, mark)
    case 'picture':
      return paintPicture(sheet, mark)
  }
}

/** Each face goes into the document once, when first wanted. */
async function embedFaces(document: PDFDocument, fonts: PaperFonts, paper: PaperDocument) {
  document.registerFontkit(openFaces(fonts))
  const embedded = new Map<Face, PDFFont>()
  for (const face of facesUsed(fonts, paper))
    embedded.set(face, await document.embedFont(face.bytes, { subset: true, customName: face.name }))
  return embedded
}

function facesUsed(fonts: PaperFonts, paper: PaperDocument): Set<Face> {
  const used = new Set<Face>()
  const see = (text: string, weight: keyof PaperFonts) => {
    for (const run of wordRuns(text, fonts, weight)) used.add(run.face)
  }
  for (const mark of paper.pages.flatMap((page) => page.marks)) {
    if (mark.kind === 'text') see(mark.text, mark.weight)
    if (mark.kind !== 'drawing') continue
    for (const primitive of laidOut(mark).primitives)
      if (primitive.kind === 'text') see(primitive.text, primitive.weight)
  }
  return used
}

/** A document being painted: the library, the faces and pictures that are in the document already. */
type Painting = {
  pdf: Pdf
  document: PDFDocument
  embedded: Map<Face, PDFFont>
  pictures: Pictures
  fonts: PaperFonts
}

/** Operators handed on in one call. */
const most = 10_000

function paintPage({ pdf, document, embedded, pictures, fonts }: Painting, paper: Page): void {
  const page = document.addPage([points(paper.width), points(paper.height)])
  const keys = new Map<Face, ReturnType<Sheet['fontOf']>>()
  const fontOf: Sheet['fontOf'] = (face) => {
    const known = keys.get(face)
    if (known) return known
    const font = embedded.get(face)
    if (!font) throw new Error(`${face.name} isn't in the document`)
    const made = { font, key: page.node.newFontDictionary(font.name, font.ref) }
    keys.set(face, made)
    return made
  }
  const sheet: Sheet = { pdf, page, height: paper.height, fonts, fontOf, pictures, out: [] }
  for (const mark of paper.marks) paintMark(sheet, mark)
  // A sheet of labels has more than can be handed on as arguments of one call.
  for (let at = 0; at < sheet.out.length; at += most) page.pushOperators(...sheet.out.slice(at, at + most))
}

/** Has the painter's library loaded, some 0.4 s of a slow machine's time, before the first paper is painted. */
export const readyToPaint = async (): Promise<void> => void (await import('pdf-lib'))

/**
 * Paints a paper as PDF bytes, the same bytes for the same paper whenever and wherever: its dates are the day of issue, a
 * draft has none. Printing is asked for at true size. Characters without a glyph print as □ (`uncovered` tells them
 * beforehand). Throws RangeError on a place that is no finite number, and on a picture that can't be read.
 */
export async function paintPdf(paper: PaperDocument, given?: PaperFonts): Promise<Uint8Array> {
  const [pdf, fonts] = await Promise.all([import('pdf-lib'), given ?? loadFonts()])
  const document = await pdf.PDFDocument.create({ updateMetadata: false })
  document.setTitle(withoutIsolation(paper.title), { showInWindowTitleBar: true })
  document.setProducer('Bracework')
  document.setLanguage(paper.language ?? 'en-GB')
  if (paper.issuedAt !== null) {
    document.setCreationDate(new Date(paper.issuedAt))
    document.setModificationDate(new Date(paper.issuedAt))
  }
  document.catalog.getOrCreateViewerPreferences().setPrintScaling(pdf.PrintScaling.None)
  const embedded = await embedFaces(document, fonts, paper)
  const pictures = await embedPictures(document, paper)
  for (const page of paper.pages) paintPage({ pdf, document, embedded, pictures, fonts }, page)
  // The library would rest on a timer after every 50 objects; a whole card is written in less than one rest is worth.
  return document.save({ useObjectStreams: true, objectsPerTick: Infinity })
}
