import { figureText } from '../../drawing/figureText.ts'
import type { JobCardInput } from '../jobCardInput.ts'
import { plainMeasure } from '../measure.ts'
import type { Measure, PaperDocument } from '../page.ts'
import { bevelTemplates } from './bevels.ts'
import { drillingTemplates } from './drilling.ts'
import { notchTemplates } from './notch.ts'
import { fullSizeOffers } from './offers.ts'
import { truePrinter } from './printer.ts'
import { rodSheets } from './rod.ts'
import { framed, sheetRoom, type FrameInput, type SheetBody, type SheetRoom } from './sheetFrame.ts'
import { fullSizeKinds, type FullSizeKind, type Template } from './template.ts'
import { tiled } from './tiles.ts'
import { topTemplates } from './topCurve.ts'

const templates = {
  bevels: bevelTemplates,
  notch: notchTemplates,
  top: topTemplates,
  drilling: drillingTemplates,
}

type Rooms = { upright: SheetRoom; across: SheetRoom }

function bodiesOf(kind: FullSizeKind, { spec, design, unit }: JobCardInput, rooms: Rooms): SheetBody[] {
  const figures = figureText(unit)
  if (kind === 'rod') return rodSheets(spec, design, { room: rooms.upright, figures })
  const made: Template[] = templates[kind](spec, design, figures)
  return made.flatMap((template) => tiled(template, [rooms.upright, rooms.across]))
}

/**
 * The full-size sheets of a gate: bevels, notch, shaped top, drilling and setting-out rod, of those chosen the ones that the gate wants. Everything
 * on them is at true size when printed unscaled, the printer's own error made good. They carry no draft's mark: they are laid on timber, not kept.
 */
export function fullSizeSheets(input: JobCardInput, measure: Measure = plainMeasure): PaperDocument {
  const { header, format, spec, design } = input
  const { kinds, day, printer } = input.fullSize ?? { kinds: fullSizeKinds, day: '', printer: truePrinter }
  const frame: FrameInput = { header, day, format, printer }
  const rooms: Rooms = {
    upright: sheetRoom(frame, 'upright', measure),
    across: sheetRoom(frame, 'across', measure),
  }
  const wanted = fullSizeOffers(spec, design).filter(({ kind, why }) => why === '' && kinds.includes(kind))
  const bodies = wanted.flatMap(({ kind }) => bodiesOf(kind, input, rooms))
  return {
    title: header.number === '' ? header.title : `${header.number} full-size sheets`,
    issuedAt: header.issuedAt,
    pages: framed(frame, bodies),
  }
}
