import type { PDFFont, PDFImage, PDFOperator, PDFPage } from 'pdf-lib'
import type { Point } from '../../shared/geometry/point.ts'
import { mmOfPoint, type PageText } from '../../shared/papers/page.ts'
import type { Face, PaperFonts } from '../fonts.ts'
import type { Colour } from './inks.ts'
import { runsWidth, wordRuns } from './wordRuns.ts'

export type Pdf = typeof import('pdf-lib')

/** One page being painted: y turned up and mm turned into points here and nowhere else. pictures are in the document already, by their bytes. */
export type Sheet = {
  pdf: Pdf
  page: PDFPage
  height: number
  fonts: PaperFonts
  fontOf: (face: Face) => { font: PDFFont; key: ReturnType<PDFPage['node']['newFontDictionary']> }
  pictures: ReadonlyMap<string, PDFImage>
  out: PDFOperator[]
}

/** Points of a length in mm, to a thousandth. Throws RangeError on what is no finite number. */
export const points = (mm: number): number => {
  if (!Number.isFinite(mm)) throw new RangeError(`a place on a page must be a finite number, not ${mm}`)
  return Math.round((mm / mmOfPoint) * 1000) / 1000
}

/** A line's width and dash in mm, and its colour. */
export type Stroke = { width: number; dash: readonly number[]; colour: Colour }

/** Straight lines, filled, stroked or both. mm, y down. */
export function paintPath(
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

/** A circle of four Béziers. mm, y down. */
export function paintCircle(
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

export type Words = Pick<PageText, 'x' | 'y' | 'text' | 'size' | 'weight' | 'anchor'> & {
  angle: number
  colour: Colour
}

/** A line of words, each run in the face that has it. mm, y down; size in points. */
export function paintWords(sheet: Sheet, words: Words): void {
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
