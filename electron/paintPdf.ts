import type { PDFDocument, PDFFont, PDFPage, PDFOperator } from 'pdf-lib'
import { layOut } from '../shared/drawing/layOut.ts'
import { pens } from '../shared/drawing/pens.ts'
import type { Primitive, TextPrimitive } from '../shared/drawing/primitives.ts'
import type { Point } from '../shared/geometry/point.ts'
import {
  mmOfPoint,
  type Page,
  type PageDrawing,
  type PageMark,
  type PageText,
  type PaperDocument,
} from '../shared/papers/page.ts'
import { loadFonts, type Face, type PaperFonts } from './fonts.ts'
import { fills, inks, penInk, type Colour } from './paint/inks.ts'
import { runsWidth, wordRuns } from './paint/wordRuns.ts'

type Pdf = typeof import('pdf-lib')

/** One page being painted: y turned up and mm turned into points here and nowhere else. */
type Sheet = {
  pdf: Pdf
  page: PDFPage
  height: number
  fonts: PaperFonts
  fontOf: (face: Face) => { font: PDFFont; key: ReturnType<PDFPage['node']['newFontDictionary']> }
  out: PDFOperator[]
}

const points = (mm: number): number => {
  if (!Number.isFinite(mm)) throw new RangeError(`a place on a page must be a finite number, not ${mm}`)
  return Math.round((mm / mmOfPoint) * 1000) / 1000
}

/** The drawing's scale as it is written beside its title. */
const scaleWords = (scale: number): string => `1 : ${scale}`

type Stroke = { width: number; dash: readonly number[]; colour: Colour }

function paintPath(
  sheet: Sheet,
  path: { points: Point[][]; closed: boolean; fill?: Colour; stroke?: Stroke },
): void {
  const { pdf, out, height } = sheet
  const { fill, stroke } = path
  if (!fill && !stroke) return
  out.push(pdf.pushGraphicsState())
  if (fill) out.push(pdf.setFillingRgbColor(...fill))
  if (stroke)
    out.push(
      pdf.setStrokingRgbColor(...stroke.colour),
      pdf.setLineWidth(points(stroke.width)),
      pdf.setDashPattern(stroke.dash.map(points), 0),
      pdf.setLineJoin(pdf.LineJoinStyle.Round),
    )
  for (const line of path.points) {
    line.forEach(([x, y], i) => out.push((i === 0 ? pdf.moveTo : pdf.lineTo)(points(x), points(height - y))))
    if (path.closed) out.push(pdf.closePath())
  }
  out.push(fill && stroke ? pdf.fillAndStroke() : fill ? pdf.fill() : pdf.stroke(), pdf.popGraphicsState())
}

/** How far a Bézier's handles stand off for a quarter of a circle of radius 1. */
const quarter = 0.5522847498

function paintCircle(
  sheet: Sheet,
  circle: { centre: Point; radius: number; fill?: Colour; stroke?: Stroke },
): void {
  const { pdf, out, height } = sheet
  const [x, y, r] = [points(circle.centre[0]), points(height - circle.centre[1]), points(circle.radius)]
  const h = r * quarter
  out.push(pdf.pushGraphicsState())
  if (circle.fill) out.push(pdf.setFillingRgbColor(...circle.fill))
  if (circle.stroke)
    out.push(pdf.setStrokingRgbColor(...circle.stroke.colour), pdf.setLineWidth(points(circle.stroke.width)))
  out.push(
    pdf.moveTo(x + r, y),
    pdf.appendBezierCurve(x + r, y + h, x + h, y + r, x, y + r),
    pdf.appendBezierCurve(x - h, y + r, x - r, y + h, x - r, y),
    pdf.appendBezierCurve(x - r, y - h, x - h, y - r, x, y - r),
    pdf.appendBezierCurve(x + h, y - r, x + r, y - h, x + r, y),
    pdf.closePath(),
    circle.fill && circle.stroke ? pdf.fillAndStroke() : circle.fill ? pdf.fill() : pdf.stroke(),
    pdf.popGraphicsState(),
  )
}

type Words = Pick<PageText, 'x' | 'y' | 'text' | 'size' | 'weight' | 'anchor'> & {
  angle: number
  colour: Colour
}

function paintWords(sheet: Sheet, words: Words): void {
  const { pdf, out, height } = sheet
  const runs = wordRuns(words.text, sheet.fonts, words.weight)
  const turn = (words.angle * Math.PI) / 180
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)]
  let along = { start: 0, middle: -0.5, end: -1 }[words.anchor] * runsWidth(runs, words.size)
  for (const run of runs) {
    const { font, key } = sheet.fontOf(run.face)
    const [x, y] = [words.x + along * cos, height - words.y + along * sin]
    out.push(
      pdf.beginText(),
      pdf.setFillingRgbColor(...words.colour),
      pdf.setFontAndSize(key, words.size),
      pdf.setTextMatrix(cos, sin, -sin, cos, points(x), points(y)),
      pdf.showText(font.encodeText(run.text)),
      pdf.endText(),
    )
    along += runsWidth([run], words.size)
  }
}

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
  const { width, height, scale } = mark
  const laid = layOut(mark.drawing, { width, height, scale, caption: scaleWords(scale) })
  for (const primitive of laid.primitives) paintPrimitive(sheet, primitive, [mark.x, mark.y])
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
    case 'box': {
      const [x2, y2] = [mark.x + mark.width, mark.y + mark.height]
      return paintPath(sheet, {
        points: [
          [
            [mark.x, mark.y],
            [x2, mark.y],
            [x2, y2],
            [mark.x, y2],
          ],
        ],
        closed: true,
        fill: mark.fill && inks[mark.fill],
        stroke: mark.stroke && { width: mark.stroke.width, dash: [], colour: inks[mark.stroke.ink] },
      })
    }
    case 'drawing':
      return paintDrawing(sheet, mark)
  }
}

/** Each face goes into the document once, when first wanted. */
async function embedFaces(document: PDFDocument, fonts: PaperFonts, paper: PaperDocument) {
  const { default: fontkit } = await import('@pdf-lib/fontkit')
  document.registerFontkit(fontkit)
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
    const laid = layOut(mark.drawing, { ...mark, caption: scaleWords(mark.scale) })
    for (const primitive of laid.primitives)
      if (primitive.kind === 'text') see(primitive.text, primitive.weight)
  }
  return used
}

function paintPage(
  pdf: Pdf,
  document: PDFDocument,
  embedded: Map<Face, PDFFont>,
  fonts: PaperFonts,
  paper: Page,
): void {
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
  const sheet: Sheet = { pdf, page, height: paper.height, fonts, fontOf, out: [] }
  for (const mark of paper.marks) paintMark(sheet, mark)
  page.pushOperators(...sheet.out)
}

/**
 * Paints a paper as PDF bytes, the same bytes for the same paper whenever and wherever: its dates are the day of issue, a
 * draft has none. Printing is asked for at true size. Characters without a glyph print as □ (`uncovered` tells them
 * beforehand). Throws RangeError on a place that is no finite number.
 */
export async function paintPdf(paper: PaperDocument, given?: PaperFonts): Promise<Uint8Array> {
  const [pdf, fonts] = await Promise.all([import('pdf-lib'), given ?? loadFonts()])
  const document = await pdf.PDFDocument.create({ updateMetadata: false })
  document.setTitle(paper.title, { showInWindowTitleBar: true })
  document.setProducer('Bracework')
  document.setLanguage('en-GB')
  if (paper.issuedAt !== null) {
    document.setCreationDate(new Date(paper.issuedAt))
    document.setModificationDate(new Date(paper.issuedAt))
  }
  document.catalog.getOrCreateViewerPreferences().setPrintScaling(pdf.PrintScaling.None)
  const embedded = await embedFaces(document, fonts, paper)
  for (const page of paper.pages) paintPage(pdf, document, embedded, fonts, page)
  return document.save({ useObjectStreams: true })
}
