import { markOf } from '../cutting/cutList.ts'
import type { Design } from '../gate/designModel.ts'
import type { Brace } from '../gate/leaf.ts'
import type { GateSpec, Section } from '../gate/spec.ts'
import type { ItemOf } from '../pricing/item.ts'
import type { TimberNeed } from '../pricing/needs.ts'
import { needsOf, sameSection } from '../pricing/needsOf.ts'
import type { StandingBook } from '../pricing/standingBook.ts'
import { partWords } from './partWords.ts'
import { upToTenth } from './wholeTenths.ts'

/**
 * A job that timber is to be bought for: its gate, whole, and what follows from it; chosen: price-book items put by hand when it was priced, by
 * the estimate's line.
 */
export type JobToOrder = {
  jobId: number
  number: string
  customer: string
  title: string
  spec: GateSpec
  design: Pick<Design, 'leaves' | 'cuts' | 'holes'>
  chosen: Record<string, number>
}

/**
 * A brace whose ends slant alike: the width it is sawn across, the saw's setting off square in degrees, and its length long point to long point as
 * it is worked out, mm; the cut list may have that a quarter of a millimetre shorter.
 */
export type SlantedEnds = { width: number; sawSetting: number; longPoints: number }

/** Blanks alike, mm. slanted: both ends cut slanting and parallel, so that two of them can share a cut; null for all others. */
export type Blank = { part: string; length: number; quantity: number; slanted: SlantedEnds | null }

/** Saw settings this close are one, degrees: across the widest brace they are a hundred-thousandth of a millimetre apart. */
const sameSetting = 1e-6

/** Whether two braces' ends are cut by one setting of the saw across one width, so that one cut can end both. */
export const isOneCut = (a: SlantedEnds, b: SlantedEnds): boolean =>
  a.width === b.width && Math.abs(a.sawSetting - b.sawSetting) <= sameSetting

/** Timber of one section of one job: its blanks, and the line of the price book that it is bought as. */
export type JobTimber = { section: Section; item: ItemOf<'timber'> | undefined; blanks: Blank[] }

type Slants = { slanted: SlantedEnds; quantity: number }[]

/** Braces of one row of the cut list by the cut that ends them: settings are said rounded there, and may differ by less. */
function byCut(braces: readonly Brace[]): Slants {
  const found: Slants = []
  for (const { section, sawSetting, length } of braces) {
    const slanted = { width: section.width, sawSetting, longPoints: length }
    const own = found.find((one) => isOneCut(one.slanted, slanted))
    if (!own) found.push({ slanted, quantity: 1 })
    else {
      own.quantity += 1
      own.slanted.longPoints = Math.max(own.slanted.longPoints, length)
    }
  }
  return found
}

/** Flush braces, whose ends are one slant each, by the part that the cut list names them with. */
function slantedParts({ leaves, cuts }: JobToOrder['design']): Map<string, Slants> {
  const braces = new Map(
    leaves.flatMap((leaf) =>
      leaf.braces.map((brace) => [markOf(leaf, `${brace.name} brace`), brace] as const),
    ),
  )
  const found = new Map<string, Slants>()
  for (const { part, marks } of cuts) {
    const own = marks.flatMap((mark) => braces.get(mark) ?? [])
    if (own.length > 0 && own.every(({ notch }) => notch === null)) found.set(part, byCut(own))
  }
  return found
}

/** One piece of a need as blanks: a row of braces may be of several cuts. */
function blanksOf(
  { mark, length, quantity }: TimberNeed['pieces'][number],
  slants: Slants | undefined,
): Blank[] {
  const blank = { part: partWords(mark), length: upToTenth(length) }
  if (!slants) return [{ ...blank, quantity, slanted: null }]
  return slants.map((one) => ({ ...blank, ...one }))
}

type Gathered = { need: TimberNeed; blanks: Blank[] }

/** Needs of one section together, whatever its pieces are for, as the estimate has them. */
function gathered(needs: readonly TimberNeed[], slanted: Map<string, Slants>): Gathered[] {
  const sections: Gathered[] = []
  for (const need of needs) {
    const blanks = need.pieces.flatMap((piece) => blanksOf(piece, slanted.get(piece.mark)))
    const own = sections.find((one) => sameSection(one.need.section, need.section))
    if (own) own.blanks.push(...blanks)
    else sections.push({ need, blanks })
  }
  return sections
}

/**
 * A job's timber, section by section, each with the item that its estimate is priced on: the one chosen by hand for the estimate's line, else the
 * one that fits. Blanks are rounded up to a tenth of a millimetre.
 */
export function jobTimber(book: Pick<StandingBook, 'items'>, job: JobToOrder): JobTimber[] {
  const needs = needsOf(job.spec, job.design).timber
  const taken = new Map<string, number>()
  return gathered(needs, slantedParts(job.design)).map(({ need, blanks }) => {
    const { name } = need.section
    const count = (taken.get(name) ?? 0) + 1
    taken.set(name, count)
    const chosen = job.chosen[`timber.${name}${count === 1 ? '' : ` (${count})`}`]
    const item = chosen === undefined ? book.items.timber(need) : book.items.byId(chosen)
    return { section: need.section, item: item?.kind === 'timber' ? item : undefined, blanks }
  })
}
