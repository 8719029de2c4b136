import type { Picture } from '../../shared/drawing/picture.ts'
import type { Primitive } from '../../shared/drawing/primitives.ts'
import { pens } from '../../shared/drawing/pens.ts'
import { textWidth } from '../../shared/drawing/textWidth.ts'
import { paintSvg } from '../drawing/svgPainter.ts'
import { fillColours, paperColour, penColour, pictureFaces, wordColour } from './lightPaper.ts'

/** Characters that no XML may hold, whatever they are written as. */
const unwritable = /[\p{Cs}\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/gu

const escapes: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
}
const escaped = (text: string): string =>
  text.replace(unwritable, '').replace(/[&<>"']/g, (letter) => escapes[letter] ?? '')

const hundredth = (value: number): string => String(Math.round(value * 100) / 100)

/** How a mark looks, written on it: a picture in a mail has no style sheet. Words are held to their width whatever face is there. */
function looksOf(primitive: Primitive): Record<string, string | number> {
  if (primitive.kind === 'text') {
    const { text, size, weight } = primitive
    return {
      fill: wordColour,
      'font-weight': weight === 'semibold' ? 600 : 400,
      textLength: hundredth(textWidth(text, size, weight)),
      lengthAdjust: 'spacingAndGlyphs',
    }
  }
  const { pen } = primitive
  const fill = primitive.kind === 'strokes' ? 'none' : fillColours[primitive.fill]
  if (pen === undefined) return { fill, stroke: 'none' }
  const faint: Record<string, number> = pen === 'grain' || pen === 'hatch' ? { opacity: 0.75 } : {}
  return { fill, stroke: penColour(pen), 'stroke-width': pens[pen].width, ...faint }
}

function written(primitive: Primitive, element: ReturnType<typeof paintSvg>[number]): string {
  const { class: _, ...places } = element.attributes
  const attributes = Object.entries({ ...places, ...looksOf(primitive) })
  const words = attributes.map(([name, value]) => ` ${name}="${escaped(String(value))}"`).join('')
  return element.words === undefined
    ? `<${element.tag}${words}/>`
    : `<${element.tag}${words}>${escaped(element.words)}</${element.tag}>`
}

/**
 * A picture as an SVG file that needs nothing beside it: in true millimetres, on light paper, no script, no style sheet, nothing to fetch. title is
 * what it is called; it may hold anything.
 */
export function pictureSvg({ width, height, primitives, description }: Picture, title: string): string {
  const elements = paintSvg({ width, height, scale: 1, primitives })
  const [across, down] = [hundredth(width), hundredth(height)]
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" width="${across}mm" height="${down}mm" viewBox="0 0 ${across} ${down}" role="img" font-family="${escaped(pictureFaces)}" stroke-linejoin="round">`,
    `<title>${escaped(title)}</title>`,
    `<desc>${escaped(description)}</desc>`,
    `<rect width="${across}" height="${down}" fill="${paperColour}"/>`,
    ...primitives.map((primitive, place) => {
      const element = elements[place]
      return element ? written(primitive, element) : ''
    }),
    '</svg>',
    '',
  ].join('\n')
}
