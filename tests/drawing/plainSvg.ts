import { paintSvg } from '../../renderer/drawing/svgPainter.ts'
import type { Drawing } from '../../shared/drawing/drawing.ts'
import { fillingScale } from '../../shared/drawing/fitScale.ts'
import { layOut } from '../../shared/drawing/layOut.ts'

/** The sheet that a kept drawing is laid out on, mm: what a card gives the large one. */
const sheet = { width: 180, height: 200 }

const tenth = (text: string): string =>
  text.replace(/-?\d+\.\d+/g, (number) => String(Math.round(Number(number) * 10) / 10 + 0))

/**
 * A drawing as SVG text with one element a line, places to a tenth of a millimetre on its sheet, so that rounding on another machine makes
 * no difference and a change can be read. Pens and fills stand by name; the screen's style sheet gives them their looks.
 */
export function plainSvg(drawing: Drawing): string {
  const laid = layOut(drawing, { ...sheet, scale: fillingScale(drawing, sheet) })
  // A screw's crossed slots always lie in its head's ring, so the rings are enough.
  const slots = (part: string | undefined, tag: string) =>
    tag === 'path' && part?.includes('fixings') === true
  const shown = paintSvg(laid).filter(
    ({ part, tag }) => drawing.title.startsWith('Section') || !slots(part, tag),
  )
  const lines = shown.map(({ tag, attributes, part, words }) => {
    const own = Object.entries(attributes)
      .filter(([name]) => !name.startsWith('stroke'))
      .map(([name, value]) => ` ${name}="${tenth(String(value))}"`)
    const named = part === undefined ? '' : ` data-part="${part}"`
    return `<${tag}${own.join('')}${named}${words === undefined ? '/>' : `>${words}</${tag}>`}`
  })
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${sheet.width} ${sheet.height}">`,
    `<title>${drawing.title}</title>`,
    ...lines,
    '</svg>\n',
  ].join('\n')
}
