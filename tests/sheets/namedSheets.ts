import type { GateSpec } from '../../shared/gate/spec.ts'
import type { LengthUnit } from '../../shared/job/job.ts'
import type { PaperFormat } from '../../shared/papers/page.ts'
import { header } from '../fixtures/cards.ts'
import { designOf } from '../fixtures/gates.ts'
import { hardGates } from '../fixtures/hardGates.ts'
import { wholeGates } from '../drawing/wholeGates.ts'
import { sheetInput, type SheetInput } from './everySheet.ts'

type Gate = { name: string; spec: GateSpec; unit: LengthUnit; format: PaperFormat }

const awkward = [
  'four by eight',
  'one foot',
  'slim',
  'broad',
  'twenty-five',
  'narrow',
  'six saws',
  'close together',
]
const whole = ['05', '09', '15', '20', '24', '26', '28', '33', '37', '40', '34', '22']

/** Twenty gates that leave words little room: small, slim and broad ones, and one of every make. */
export const twentyGates: Gate[] = [
  ...hardGates.filter(({ name }) => awkward.some((word) => name.includes(word))).slice(0, 8),
  ...whole.flatMap((start, i) =>
    wholeGates
      .filter(({ name }) => name.startsWith(start))
      .map((gate): Gate => ({
        ...gate,
        unit: i % 2 === 0 ? 'mm' : 'in',
        format: i % 3 === 0 ? 'letter' : 'a4',
      })),
  ),
]

/** Longest names that a gate's timbers and ironmongery may have, and its saws. */
const most = { thing: 200, saw: 57 }

/** The gate with a name on everything in it that a person names. */
function named(spec: GateSpec, name: string): GateSpec {
  const short = (length: number): string => [...name.slice(0, length)].join('').trim()
  const own = <T extends { name: string }>(thing: T): T => ({ ...thing, name: short(most.thing) })
  return {
    ...spec,
    boards: { ...spec.boards, section: own(spec.boards.section) },
    ledges: { ...spec.ledges, section: own(spec.ledges.section) },
    ...(spec.braces ? { braces: { ...spec.braces, section: own(spec.braces.section) } } : {}),
    ironmongery: spec.ironmongery.map(own),
    ...(spec.workshop
      ? {
          workshop: {
            ...spec.workshop,
            saws: spec.workshop.saws.map((saw, i) => ({ ...saw, name: `${short(most.saw)} ${i + 1}` })),
          },
        }
      : {}),
  }
}

/** All that one gate's papers are made from, everything that a person names bearing one name. */
export async function namedSheets(gate: Gate, name: string): Promise<SheetInput> {
  const spec = named(gate.spec, name)
  const { unit, format } = gate
  const customer = { ...header.customer, name, address: `${name}\n${name}`, town: name }
  const card = { header: { ...header, workshop: name, title: name, customer }, spec, design: designOf(spec) }
  const input = await sheetInput({ ...card, unit, format, draft: false })
  const { order } = input.order
  const { business } = input
  return {
    ...input,
    business: { ...business, address: `${name}\n${name}`, included: name, notIncluded: name, terms: name },
    order: {
      ...input.order,
      order: {
        ...order,
        note: name,
        suppliers: [name],
        jobs: order.jobs.map((job) => ({ ...job, customer: name })),
        lines: order.lines.map((line) => ({ ...line, name, supplier: name })),
        lengths: order.lengths.map((length) => ({ ...length, name })),
      },
      rack: input.order.rack.map((piece) => ({ ...piece, place: name, note: name })),
    },
  }
}
