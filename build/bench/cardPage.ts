import { fills, inks, penInk, type Colour } from '../../electron/paint/inks.ts'
import type { PaperFonts } from '../../electron/fonts.ts'
import type { Fill, Pen } from '../../shared/drawing/drawing.ts'
import { layOut } from '../../shared/drawing/layOut.ts'
import { pens } from '../../shared/drawing/pens.ts'
import type { Primitive } from '../../shared/drawing/primitives.ts'
import type { Point } from '../../shared/geometry/point.ts'
import type { Page, PageDrawing, PageMark, PageText, PaperDocument } from '../../shared/papers/page.ts'

const escaped = (text: string): string =>
  text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/"/g, '&quot;')

const css = (colour: Colour): string => `rgb(${colour.map((part) => Math.round(part * 255)).join(' ')})`

const box = ({ x, y, width, height }: { x: number; y: number; width: number; height: number }) =>
  `left:${x}mm;top:${y}mm;width:${width}mm;height:${height}mm`

const weights = { regular: 400, semibold: 600 }

/** A hundredth of a millimetre is finer than any printer. */
const short = (mm: number): number => Math.round(mm * 100) / 100

/** The papers' own faces, in the page itself: a page opened from words can fetch nothing. */
const faceRules = (fonts: PaperFonts): string =>
  (['regular', 'semibold'] as const)
    .flatMap((weight) =>
      (['text', 'other'] as const).map((use) => {
        const bytes = Buffer.from(fonts[weight][use].bytes).toString('base64')
        return `@font-face{font-family:${use};font-weight:${weights[weight]};src:url(data:font/ttf;base64,${bytes})}`
      }),
    )
    .join('')

/** Where a line of words starts from its anchor, and its turning about it. */
function placeOfWords({ anchor, angle = 0 }: PageText): string {
  const shift = { start: '0', middle: '-50%', end: '-100%' }[anchor]
  const turn = angle === 0 ? '' : `rotate(${-angle}deg) `
  return shift === '0' && turn === '' ? '' : `;transform:${turn}translateX(${shift})`
}

/** How far the baseline lies under a line without leading, as a share of the type size: half of what the face rises over what it falls. */
const baseline = 0.375

/** Words in a box of no height, set so that their baseline lies on the mark's. */
const wordsHtml = (mark: PageText): string =>
  `<p style="left:${mark.x}mm;top:calc(${mark.y}mm - ${baseline}em);font-size:${mark.size}pt;color:${css(inks[mark.ink])}` +
  `${mark.weight === 'semibold' ? ';font-weight:600' : ''}${placeOfWords(mark)}">${escaped(mark.text)}</p>`

const pathOf = (points: readonly Point[], closed: boolean): string =>
  `M${points.map(([x, y]) => `${short(x)} ${short(y)}`).join('L')}${closed ? 'Z' : ''}`

/** A pen's width, dash and ink are written at each line, as the card's own painter does. */
function strokeOf(pen: Pen | undefined): string {
  if (pen === undefined) return 'stroke="none"'
  const { width, dash } = pens[pen]
  return `stroke="${css(penInk(pen))}" stroke-width="${width}"${dash.length > 0 ? ` stroke-dasharray="${dash.join(' ')}"` : ''}`
}

const fillOf = (fill: Fill): string => (fill === 'none' ? 'fill="none"' : `fill="${css(fills[fill])}"`)

function primitiveSvg(primitive: Primitive): string {
  switch (primitive.kind) {
    case 'path':
      return `<path d="${pathOf(primitive.points, primitive.closed)}" ${fillOf(primitive.fill)} ${strokeOf(primitive.pen)}/>`
    case 'strokes':
      return `<path d="${primitive.lines.map((line) => pathOf(line, false)).join('')}" fill="none" ${strokeOf(primitive.pen)}/>`
    case 'circle': {
      const [x, y] = primitive.centre
      return `<circle cx="${short(x)}" cy="${short(y)}" r="${primitive.radius}" ${fillOf(primitive.fill)} ${strokeOf(primitive.pen)}/>`
    }
    case 'text': {
      const { text, size, weight, anchor, angle } = primitive
      const [x, y] = [short(primitive.x), short(primitive.y)]
      const turn = angle === 0 ? '' : ` transform="rotate(${-angle} ${x} ${y})"`
      return `<text x="${x}" y="${y}" font-size="${size}" font-weight="${weights[weight]}" text-anchor="${anchor}"${turn}>${escaped(text)}</text>`
    }
  }
}

function drawingSvg(mark: PageDrawing): string {
  const { width, height, scale } = mark
  const laid = layOut(mark.drawing, { width, height, scale, caption: `1 : ${scale}` })
  return `<svg style="${box(mark)}" viewBox="0 0 ${width} ${height}">${laid.primitives.map(primitiveSvg).join('')}</svg>`
}

/** Ruled lines of a page lie together in one drawing of its whole size. */
function ruledSvg({ width, height, marks }: Page): string {
  const lines = marks.flatMap((mark) =>
    mark.kind === 'line'
      ? [
          `<line x1="${mark.x1}" y1="${mark.y1}" x2="${mark.x2}" y2="${mark.y2}" stroke="${css(inks[mark.ink])}" stroke-width="${mark.width}" stroke-dasharray="${(mark.dash ?? []).join(' ')}"/>`,
        ]
      : mark.kind === 'path'
        ? [
            `<${mark.closed ? 'polygon' : 'polyline'} points="${mark.points.map((at) => at.join()).join(' ')}" fill="none" stroke="${css(inks[mark.ink])}" stroke-width="${mark.width}" stroke-dasharray="${(mark.dash ?? []).join(' ')}"/>`,
          ]
        : [],
  )
  return `<svg style="${box({ x: 0, y: 0, width, height })}" viewBox="0 0 ${width} ${height}">${lines.join('')}</svg>`
}

function markHtml(mark: PageMark): string {
  switch (mark.kind) {
    case 'text':
      return wordsHtml(mark)
    case 'line':
    case 'path':
      return ''
    case 'box': {
      const fill = mark.fill ? `;background:${css(inks[mark.fill])}` : ''
      const stroke = mark.stroke
        ? `;outline:${mark.stroke.width}mm solid ${css(inks[mark.stroke.ink])};outline-offset:${-mark.stroke.width / 2}mm`
        : ''
      return `<div style="${box(mark)}${fill}${stroke}"></div>`
    }
    case 'drawing':
      return drawingSvg(mark)
    case 'picture':
      return `<img style="${box(mark)}" src="data:image/${mark.format};base64,${mark.base64}" alt="">`
  }
}

const sheetHtml = (page: Page): string => {
  const boxes = page.marks.filter(({ kind }) => kind === 'box').map(markHtml)
  const rest = page.marks.filter(({ kind }) => kind !== 'box').map(markHtml)
  return `<section>${boxes.join('')}${ruledSvg(page)}${rest.join('')}</section>`
}

/**
 * The same card as a page for a browser to print: the same words at the same places in the same faces and inks, the drawings as SVG
 * from the same page model. Every sheet has the size of the first.
 */
export function cardPage(card: PaperDocument, fonts: PaperFonts): string {
  const [first] = card.pages
  if (!first) throw new RangeError('a card has at least one page')
  const style = [
    faceRules(fonts),
    `@page{size:${first.width}mm ${first.height}mm;margin:0}`,
    'body{margin:0;font-family:text,other;print-color-adjust:exact}',
    `section{position:relative;width:${first.width}mm;height:${first.height}mm;overflow:hidden;break-inside:avoid}`,
    'section+section{break-before:page}section>*{position:absolute}svg{overflow:visible;display:block}path{stroke-linejoin:round}',
    `p{margin:0;white-space:pre;line-height:0;transform-origin:0 ${baseline}em}`,
  ].join('')
  return `<!doctype html><html lang="en-GB"><meta charset="utf-8"><title>${escaped(card.title)}</title><style>${style}</style>${card.pages.map(sheetHtml).join('')}</html>`
}
