import { lengthTolerance } from '../geometry/point.ts'
import type { BraceBay } from './braceAngle.ts'
import type { Check } from './checks.ts'
import type { Brace } from './leaf.ts'
import type { GateSpec } from './spec.ts'
import { writeShortMm } from '../units/writeLength.ts'

/** Least slope of a brace from the horizontal, degrees. Source: L. Goring, Manual of Purpose-Made Woodworking Joinery, p. 85. */
export const soundAngle = 45

/** Slack in degrees for what binary numbers lose, so that a brace of just 45° isn't called flat. */
const angleSlack = 1e-9

/** The narrowest run in which a brace stands upright at most: its own width. */
function whyNoFit({ clearHeight, run, width }: BraceBay): { message: string; remedy: string; field: string } {
  if (clearHeight <= lengthTolerance)
    return {
      message: `there is no clear height between the ledges (${writeShortMm(clearHeight)} mm)`,
      remedy: 'Move the ledges apart, use fewer, or make the leaf higher.',
      field: 'ledges.heights',
    }
  if (run <= 0)
    return {
      message: `the setbacks leave no run along the ledge (${writeShortMm(run)} mm)`,
      remedy: 'Lessen the foot or head setback, or make the leaf wider.',
      field: 'braces.footSetback',
    }
  return {
    message: `a brace ${writeShortMm(width)} mm wide needs a run of more than its own width and has ${writeShortMm(run)} mm`,
    remedy: `Use a brace narrower than ${writeShortMm(run)} mm, lessen the setbacks, or make the leaf wider.`,
    field: 'braces.section',
  }
}

const called = (name: Brace['name']): string => (name === 'single' ? 'The brace' : `The ${name} brace`)

/** A brace that can't be put in, and which size to change. */
export function braceFitStop(name: Brace['name'], bay: BraceBay): Check {
  const { message, remedy, field } = whyNoFit(bay)
  return {
    id: 'brace-no-fit',
    level: 'stop',
    message: `${called(name)} doesn’t fit: ${message}.`,
    figures: [],
    remedy,
    field,
  }
}

/** A bay of a line of braces with no height. */
export const braceLineStop = (name: Brace['name']): Check => ({
  id: 'brace-no-fit',
  level: 'stop',
  message: `${called(name)} doesn’t fit: the middle ledge leaves its bay no height.`,
  figures: [],
  remedy: 'Move the middle ledge or use two ledges.',
  field: 'ledges.heights',
})

/** A brace flatter than 45° carries its load poorly: said, with the ways to steepen it. */
export function braceAngleChecks(
  braces: Brace[],
  how: NonNullable<GateSpec['braces']>,
  ledges: number,
): Check[] {
  return braces
    .filter((brace) => brace.angle < soundAngle - angleSlack)
    .map((brace) => {
      const ways = [
        ...(how.run === 'each-bay' && ledges > 2 ? ['put the braces in line'] : []),
        ...(how.run === 'each-bay' && ledges > 2 ? ['use fewer ledges'] : []),
        'make a pair of narrower leaves',
      ]
      const list = ways.length > 1 ? `${ways.slice(0, -1).join(', ')} or ${ways.at(-1)}` : ways[0]
      return {
        id: 'brace-angle',
        level: 'caution',
        message: `${called(brace.name)} stands at ${writeShortMm(brace.angle, 3)}°; at least ${soundAngle}° is sound.`,
        figures: [`brace.${brace.name}.angle`],
        remedy: `To steepen it, ${list}.`,
        field: 'braces.run',
      }
    })
}
