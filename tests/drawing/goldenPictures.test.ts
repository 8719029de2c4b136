import { execFileSync } from 'node:child_process'
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { loadFonts } from '../../electron/fonts.ts'
import { paintPdf } from '../../electron/paintPdf.ts'
import { fittingScale } from '../../shared/drawing/fitScale.ts'
import { gateDrawings } from '../../shared/drawing/gateDrawings.ts'
import { coarse, readGreyPng, type Grey } from '../fixtures/greyPng.ts'
import { designOf } from '../fixtures/gates.ts'
import { wholeGates } from './wholeGates.ts'

/** The sheet the pictures are printed on, mm, and how finely. */
const [sheet, dotsPerInch] = [{ width: 180, height: 200 }, 72]

/** Squares compared, dots a side, and how far their mean darkness may lie apart: smoothing differs by a few, a moved line by dozens. */
const [square, apart] = [6, 16]

const folder = mkdtempSync(join(tmpdir(), 'bracework-golden-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

/** A gate's back as it prints: painted as PDF, then made a picture by poppler's pdftoppm. */
async function printed(name: string, spec: (typeof wholeGates)[number]['spec']): Promise<Uint8Array> {
  const drawing = gateDrawings(spec, designOf(spec), 'mm').back
  const scale = fittingScale(drawing, sheet)
  const mark = { kind: 'drawing' as const, x: 0, y: 0, ...sheet, scale, drawing }
  const paper = { title: name, issuedAt: null, pages: [{ ...sheet, marks: [mark] }] }
  const stem = join(folder, name)
  writeFileSync(`${stem}.pdf`, await paintPdf(paper, await loadFonts()))
  execFileSync('pdftoppm', ['-r', String(dotsPerInch), '-gray', '-png', '-singlefile', `${stem}.pdf`, stem])
  return readFileSync(`${stem}.png`)
}

/**
 * The forty gates in print as they were when somebody last looked at them. A picture that isn't there yet is made, and the test fails until
 * it is looked at and kept; after a change that was meant, take the old picture away first.
 */
/** How far apart the darkest-changed squares of two pictures lie. */
function apartBy(one: Grey, other: Grey): number {
  const was = coarse(one, square)
  return Math.max(...coarse(other, square).map((mean, at) => Math.abs(mean - (was[at] ?? 0))))
}

const kept = (name: string): Grey => readGreyPng(readFileSync(new URL(`golden/${name}.png`, import.meta.url)))

describe('the printed drawings of forty gates', () => {
  it.each(wholeGates)('look as they did: $name', async ({ name, spec }) => {
    const now = await printed(name, spec)
    const path = new URL(`golden/${name}.png`, import.meta.url)
    const known = existsSync(path)
    if (!known) writeFileSync(path, now)
    expect(known, `${name}.png was made anew: look at it, then keep it`).toBe(true)
    const [before, after] = [readGreyPng(readFileSync(path)), readGreyPng(now)]
    expect([after.width, after.height]).toEqual([before.width, before.height])
    expect(apartBy(before, after)).toBeLessThan(apart)
  })

  it('are told apart: a gate of the other hand, one without its hinges', () => {
    expect(apartBy(kept('01-plain-left'), kept('02-plain-right-tongues-to-hanging'))).toBeGreaterThan(apart)
    expect(apartBy(kept('01-plain-left'), kept('36-auto-gap-climate'))).toBeGreaterThan(apart)
  })
})
