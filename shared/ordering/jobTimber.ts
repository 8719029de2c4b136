import { markOf } from '../cutting/cutList.ts'
import type { Design } from '../gate/designModel.ts'
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

/** How a brace's blank ends: the width it is sawn across and the saw's setting off square, degrees. */
export type SlantedEnds = { width: number; sawSetting: number }

/** Blanks alike, mm. slanted: both ends cut slanting and parallel, so that two of them can share a cut; null for all others. */
export type Blank = { part: string; length: number; quantity: number; slanted: SlantedEnds | null }

/** Timber of one section of one job: its blanks, and the line of the price book that it is bought as. */
export type JobTimber = { section: Section; item: ItemOf<'timber'> | undefined; blanks: Blank[] }

/** Braces that end in one slant at either end, by the part that the cut list names them with. */
function slantedParts({ leaves, cuts }: JobToOrder['design']): Map<string, SlantedEnds> {
  const braces = new Map(
    leaves.flatMap((leaf) =>
      leaf.braces.map((brace) => [markOf(leaf, `${brace.name} brace`), brace] as const),
    ),
  )
  const found = new Map<string, SlantedEnds>()
  for (const { part, marks } of cuts) {
    const brace = braces.get(marks[0] ?? '')
    if (brace?.notch === null) found.set(part, { width: brace.section.width, sawSetting: brace.sawSetting })
  }
  return found
}

type Gathered = { need: TimberNeed; blanks: Blank[] }

/** Needs of one section together, whatever its pieces are for, as the estimate has them. */
function gathered(needs: readonly TimberNeed[], slanted: Map<string, SlantedEnds>): Gathered[] {
  const sections: Gathered[] = []
  for (const need of needs) {
    const blanks = need.pieces.map(({ mark, length, quantity }): Blank => ({
      part: partWords(mark),
      length: upToTenth(length),
      quantity,
      slanted: need.use === 'braces' ? (slanted.get(mark) ?? null) : null,
    }))
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
