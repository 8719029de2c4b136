import { lengthTolerance } from '../geometry/point.ts'
import { boardWidths, type Boarding } from './boarding.ts'
import type { Check } from './checks.ts'
import type { Board } from './leaf.ts'
import type { GateSpec } from './spec.ts'
import { writeShortMm } from '../units/writeLength.ts'

type Rip = GateSpec['boards']['rip']

/** Narrowest ripped board a fixing and a saw can be trusted with, mm: common practice. */
export const narrowestRip = 40

const places: Record<Rip, string> = {
  hanging: 'at the hanging edge',
  closing: 'at the closing edge',
  both: 'at both edges',
}

/** The widths the other two choices would give, in a sentence. */
function otherChoices(leafWidth: number, boarding: Boarding, chosen: Rip): string {
  const others = (['hanging', 'closing', 'both'] as const).filter((rip) => rip !== chosen)
  return others
    .map((rip) => {
      const widths = boardWidths(leafWidth, boarding, rip)
      const ripped = (rip === 'closing' ? widths.at(-1) : widths[0]) ?? 0
      const says = ripped > 0 ? `${writeShortMm(ripped)} mm` : `no board at all (${writeShortMm(ripped)} mm)`
      return `ripping ${places[rip]} gives ${says}${rip === 'both' ? ' each' : ''}`
    })
    .join('; ')
}

/**
 * A ripped board under 40 mm can't be made; from there to a third of the cover it looks mean and is said.
 * The remedy gives the widths the other two choices would give.
 */
export function rippedBoardChecks(
  { boards, leafWidth }: { boards: Board[]; leafWidth: number },
  boarding: Boarding,
  chosen: Rip,
): Check[] {
  const narrowest = boards
    .map((board, index) => ({ ...board, index }))
    .filter((board) => board.ripped)
    .sort((a, b) => a.width - b.width)[0]
  if (!narrowest) return []
  const { width, index } = narrowest
  const stop = width < narrowestRip - lengthTolerance
  if (!stop && width > boarding.cover / 3 + lengthTolerance) return []
  const where = boards.length === 1 ? 'The only board' : `Board ${index + 1}, ripped ${places[chosen]},`
  const remedy =
    boards.length === 1
      ? 'Make the leaf wider.'
      : `Rip elsewhere or change the leaf’s width: ${otherChoices(leafWidth, boarding, chosen)}.`
  const comesTo =
    width > 0 ? `comes to ${writeShortMm(width)} mm` : `would have to be ${writeShortMm(width)} mm wide`
  return [
    {
      id: width > 0 ? 'ripped-board-narrow' : 'part-no-size',
      level: stop ? 'stop' : 'caution',
      message: stop
        ? `${where} ${comesTo}; ${narrowestRip} mm is the least that can be made.`
        : `${where} ${comesTo}, no more than a third of its cover of ${writeShortMm(boarding.cover)} mm.`,
      figures: [`board.${index + 1}.width`],
      remedy,
      field: 'boards.rip',
    },
  ]
}
