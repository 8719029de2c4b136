import type { Picture } from '../../shared/drawing/picture.ts'
import type { Primitive, TextPrimitive } from '../../shared/drawing/primitives.ts'
import { pens } from '../../shared/drawing/pens.ts'
import type { Point } from '../../shared/geometry/point.ts'
import { fillColours, paperColour, penColour, pictureFaces, wordColour } from './lightPaper.ts'
import { atSize } from './pngSize.ts'

type Context = CanvasRenderingContext2D

/** Dots of a picture in all that a mail and a small machine still carry. */
const mostDots = 24e6

/** Dots across a picture: 300 to the inch where that isn't too many, and never fewer than 1600, for a large screen. */
export function dotsAcross({ width, height }: Pick<Picture, 'width' | 'height'>): number {
  const fine = Math.min((width / 25.4) * 300, Math.sqrt((mostDots * width) / height), 4000)
  return Math.max(1600, Math.round(fine))
}

function trace(context: Context, points: readonly Point[], closed: boolean): void {
  points.forEach(([x, y], place) => (place === 0 ? context.moveTo(x, y) : context.lineTo(x, y)))
  if (closed) context.closePath()
}

function paintShape(context: Context, primitive: Exclude<Primitive, TextPrimitive>): void {
  context.beginPath()
  if (primitive.kind === 'path') trace(context, primitive.points, primitive.closed)
  else if (primitive.kind === 'strokes') for (const line of primitive.lines) trace(context, line, false)
  else context.arc(...primitive.centre, primitive.radius, 0, 2 * Math.PI)
  if (primitive.kind !== 'strokes' && primitive.fill !== 'none') {
    context.fillStyle = fillColours[primitive.fill]
    context.fill()
  }
  if (primitive.pen === undefined) return
  const { width, dash } = pens[primitive.pen]
  context.globalAlpha = primitive.pen === 'grain' || primitive.pen === 'hatch' ? 0.75 : 1
  context.strokeStyle = penColour(primitive.pen)
  context.lineWidth = width
  context.setLineDash(dash)
  context.stroke()
  context.globalAlpha = 1
}

const anchors = { start: 'left', middle: 'center', end: 'right' } as const

const faceOf = (weight: TextPrimitive['weight'], size: number): string =>
  `${weight === 'semibold' ? 600 : 400} ${size}px ${pictureFaces}`

/** Words are set a hundred times as large and shrunk: a face under a few pixels has no honest shape. */
function paintWords(context: Context, { x, y, text, size, weight, anchor, angle }: TextPrimitive): void {
  context.save()
  context.translate(x, y)
  context.rotate((-angle * Math.PI) / 180)
  context.scale(0.01, 0.01)
  context.font = faceOf(weight, size * 100)
  context.textAlign = anchors[anchor]
  context.fillStyle = wordColour
  context.fillText(text, 0, 0)
  context.restore()
}

/** Paints a picture on a canvas of its own, so many dots across, in the program's own face, which is there by then. */
export async function pictureCanvas(picture: Picture, across: number): Promise<HTMLCanvasElement> {
  await Promise.all([document.fonts.load(faceOf('regular', 16)), document.fonts.load(faceOf('semibold', 16))])
  const canvas = document.createElement('canvas')
  const fine = across / picture.width
  canvas.width = across
  canvas.height = Math.round(picture.height * fine)
  const context = canvas.getContext('2d')
  if (!context) throw new Error('this window gives no canvas to paint on')
  context.scale(fine, fine)
  context.lineJoin = 'round'
  context.fillStyle = paperColour
  context.fillRect(0, 0, picture.width, picture.height)
  for (const primitive of picture.primitives)
    if (primitive.kind === 'text') paintWords(context, primitive)
    else paintShape(context, primitive)
  return canvas
}

/** A picture as a PNG file, at least 1600 dots wide, that says how wide it is in true millimetres. */
export async function picturePng(picture: Picture): Promise<Blob> {
  const across = dotsAcross(picture)
  const canvas = await pictureCanvas(picture, across)
  const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/png'))
  if (!blob) throw new Error('the picture couldn’t be made')
  const bytes = atSize(new Uint8Array(await blob.arrayBuffer()), (across / picture.width) * 1000)
  return new Blob([bytes], { type: 'image/png' })
}
