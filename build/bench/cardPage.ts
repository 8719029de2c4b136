import { readFileSync } from 'node:fs'
import { layOut } from '../../shared/drawing/layOut.ts'
import type { Primitive } from '../../shared/drawing/primitives.ts'
import { pens } from '../../shared/drawing/pens.ts'
import type { PageMark, PaperDocument } from '../../shared/papers/page.ts'
import { inProject } from '../paths.ts'

const escaped = (text: string): string => text.replace(/&/g, '&amp;').replace(/</g, '&lt;')

const face = (weight: number, file: string): string => {
  const bytes = readFileSync(inProject(`node_modules/@expo-google-fonts/ibm-plex-sans/${file}`)).toString(
    'base64',
  )
  return `@font-face{font-family:Plex;font-weight:${weight};src:url(data:font/ttf;base64,${bytes})}`
}

const points = (line: readonly (readonly [number, number])[]): string =>
  line.map(([x, y]) => `${x},${y}`).join(' ')

/** A primitive of a laid-out drawing, millimetre for millimetre as the PDF painter draws it. */
function primitiveSvg(primitive: Primitive): string {
  switch (primitive.kind) {
    case 'path': {
      const stroke = primitive.pen === undefined ? 'none' : 'black'
      const width = primitive.pen === undefined ? 0 : pens[primitive.pen].width
      const fill = primitive.fill === 'none' ? 'none' : '#eee'
      return `<${primitive.closed ? 'polygon' : 'polyline'} points="${points(primitive.points)}" fill="${fill}" stroke="${stroke}" stroke-width="${width}"/>`
    }
    case 'strokes':
      return primitive.lines
        .map(
          (line) =>
            `<polyline points="${points(line)}" fill="none" stroke="black" stroke-width="${pens[primitive.pen].width}"/>`,
        )
        .join('')
    case 'circle':
      return `<circle cx="${primitive.centre[0]}" cy="${primitive.centre[1]}" r="${primitive.radius}" fill="none" stroke="black" stroke-width="0.2"/>`
    case 'text':
      return `<text x="${primitive.x}" y="${primitive.y}" font-size="${primitive.size}" text-anchor="${primitive.anchor}" transform="rotate(${-primitive.angle} ${primitive.x} ${primitive.y})">${escaped(primitive.text)}</text>`
  }
}

function markSvg(mark: PageMark): string {
  switch (mark.kind) {
    case 'text': {
      const weight = mark.weight === 'semibold' ? 600 : 400
      return `<text x="${mark.x}" y="${mark.y}" font-size="${mark.size * 0.3528}" font-weight="${weight}" text-anchor="${mark.anchor}">${escaped(mark.text)}</text>`
    }
    case 'line':
      return `<line x1="${mark.x1}" y1="${mark.y1}" x2="${mark.x2}" y2="${mark.y2}" stroke="black" stroke-width="${mark.width}"/>`
    case 'box':
      return `<rect x="${mark.x}" y="${mark.y}" width="${mark.width}" height="${mark.height}" fill="none" stroke="black" stroke-width="0.3"/>`
    case 'drawing': {
      const laid = layOut(mark.drawing, { width: mark.width, height: mark.height, scale: mark.scale })
      return `<g transform="translate(${mark.x} ${mark.y})">${laid.primitives.map(primitiveSvg).join('')}</g>`
    }
  }
}

/** The same card as a page for a browser to print: every word, line and drawing of it, in the same typeface. */
export function cardPage(card: PaperDocument): string {
  const faces =
    face(400, '400Regular/IBMPlexSans_400Regular.ttf') + face(600, '600SemiBold/IBMPlexSans_600SemiBold.ttf')
  const style = `${faces}@page{size:A4;margin:0}body{margin:0;font-family:Plex}svg{display:block;width:210mm;height:297mm;page-break-after:always}`
  const sheets = card.pages.map(
    ({ width, height, marks }) =>
      `<svg viewBox="0 0 ${width} ${height}">${marks.map(markSvg).join('')}</svg>`,
  )
  return `<!doctype html><meta charset="utf-8"><style>${style}</style>${sheets.join('')}`
}
