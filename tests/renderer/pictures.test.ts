import { crc32 } from 'node:zlib'
import { describe, expect, it } from 'vitest'
import { dotsAcross } from '../../renderer/pictures/pictureCanvas.ts'
import { pictureSvg } from '../../renderer/pictures/pictureSvg.ts'
import { atSize } from '../../renderer/pictures/pngSize.ts'
import { drawnWidth, turned } from '../../renderer/preview/pageTurning.ts'
import { design } from '../../shared/gate/design.ts'
import { gateDrawings } from '../../shared/drawing/gateDrawings.ts'
import { pictureOf } from '../../shared/drawing/picture.ts'
import { wholeSpecs } from './wholeSpecs.ts'

const drawings = wholeSpecs.flatMap(({ spec }) => {
  const outcome = design(spec)
  return outcome.made ? [gateDrawings(spec, outcome.design, 'mm')] : []
})[0]
if (!drawings) throw new Error('no gate is drawn')
const { back } = drawings
const parsed = (svg: string) => new DOMParser().parseFromString(svg, 'image/svg+xml').documentElement

describe('a picture as SVG', () => {
  const svgOf = (title: string) => {
    return pictureSvg(pictureOf([back], { width: 150, sizes: true, unit: 'mm' }), title)
  }

  it('is in true millimetres and needs nothing beside it: no script, no style sheet, nothing to fetch', () => {
    const svg = svgOf('2026-007 gate')
    expect(svg).toMatch(/<svg [^>]*width="150mm" height="[\d.]+mm" viewBox="0 0 150 [\d.]+"/)
    expect(svg).not.toMatch(/<script|<style|<foreignObject|<image|<use|href|url\(|\son\w+=|@import|class=/i)
    expect(svg.match(/https?:[^"]*/g)).toEqual(['http://www.w3.org/2000/svg'])
    const words = parsed(svg).querySelectorAll('text')
    expect(words.length).toBeGreaterThan(5)
    for (const word of words) expect(Number(word.getAttribute('textLength'))).toBeGreaterThan(0)
  })

  it.each([
    '"><script>alert(1)</script>',
    '</title><script>alert(1)</script>',
    '<img src=x onerror=alert(1)>',
    ']]><!--',
    '&#x3c;script&#x3e;',
    '\u0000\u0008\uffff\ud800',
    "' onload='alert(1)",
  ])('holds a title like %j as words and nothing else', (title) => {
    const svg = svgOf(title)
    const clean = svgOf('clean')
    expect(svg.match(/<[a-z]+/g)).toEqual(clean.match(/<[a-z]+/g))
    for (const unwritable of ['\u0000', '\u0008', '\uffff', '\ud800'])
      expect(svg.includes(unwritable)).toBe(false)
  })
})

describe('a picture as PNG', () => {
  it('is 300 dots to the inch, at least 1600 across, and not past what a mail carries', () => {
    expect(dotsAcross({ width: 180, height: 90 })).toBe(2126)
    expect(dotsAcross({ width: 60, height: 60 })).toBe(1600)
    expect(dotsAcross({ width: 400, height: 100 })).toBe(4000)
    expect(dotsAcross({ width: 400, height: 1000 })).toBe(3098)
  })

  it('says its true width, in a piece with the right check sum right after the head', () => {
    const png = Uint8Array.from({ length: 60 }, (_, at) => at)
    const sized = atSize(png, 11811)
    expect(sized.length).toBe(81)
    expect([...sized.subarray(0, 33)]).toEqual([...png.subarray(0, 33)])
    expect([...sized.subarray(54)]).toEqual([...png.subarray(33)])
    const view = new DataView(sized.buffer)
    expect([view.getUint32(33), view.getUint32(41), view.getUint32(45), view.getUint8(49)]).toEqual([
      9, 11811, 11811, 1,
    ])
    expect(view.getUint32(50)).toBe(crc32(sized.subarray(37, 50)))
  })
})

describe('turning pages', () => {
  const scroll = { scrollTop: 0, scrollHeight: 900, clientHeight: 400 }
  it('scrolls a page wider than its room through before it turns', () => {
    expect(turned('PageDown', { page: 2, pages: 3, scroll })).toBeUndefined()
    expect(turned('PageDown', { page: 2, pages: 3, scroll: { ...scroll, scrollTop: 500 } })).toBe(3)
    expect(turned('PageUp', { page: 2, pages: 3, scroll })).toBe(1)
    expect(
      ['ArrowRight', 'ArrowLeft', 'Home', 'End', 'x'].map((key) =>
        turned(key, { page: 2, pages: 3, scroll }),
      ),
    ).toEqual([3, 1, 1, 3, undefined])
  })
  it('shows the whole page, or as wide as there is room', () => {
    const a4 = { width: 210, height: 297 }
    expect(drawnWidth(a4, { width: 741, height: 400 }, 'whole')).toBe(265)
    expect(drawnWidth(a4, { width: 741, height: 400 }, 'width')).toBe(717)
    expect(drawnWidth(a4, { width: 3000, height: 1000 }, 'width')).toBe(1400)
  })
})
