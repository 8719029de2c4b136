import { calledIn } from '../../describe/describeGate.ts'
import { hasTreatedTimber } from '../../describe/timberWords.ts'
import { toHalf } from '../../cutting/cutList.ts'
import { sectionsOf } from '../../gate/sectionsOf.ts'
import type { GateSpec } from '../../gate/spec.ts'
import { timberNamed } from '../../timber/species.ts'
import { writeInches, writeShortMm } from '../../units/writeLength.ts'
import { listed } from '../leafWords.ts'
import type { JobCardInput } from '../jobCardInput.ts'

/** What a customer should know under one heading, each a sentence or two. */
export type CarePart = { title: string; words: string[] }

type Kind = GateSpec['ironmongery'][number]['kind']

const has = ({ ironmongery }: GateSpec, kind: Kind): boolean =>
  ironmongery.some((piece) => piece.kind === kind)

/** A gate or a door, and whether one speaks of it as several. */
function speaking({ spec, header }: JobCardInput) {
  const called = spec.stable ? 'door' : calledIn(header.title)
  return spec.leaves === 2 ? { it: 'them', called: `${called}s` } : { it: 'it', called }
}

/** How far a board moves in a year, where the air on the site is known; both ways as for the whole of a full board. */
function reckoned({ design, unit }: JobCardInput): string {
  const { movement } = design
  if (!movement) return ''
  const mm = toHalf(movement.wettest.boardChange - movement.driest.boardChange)
  if (mm <= 0) return ''
  const size = unit === 'mm' ? `${writeShortMm(mm)} mm` : `${writeInches(mm)} (${writeShortMm(mm)} mm)`
  return ` For this timber and the air you told us of we reckon about ${size} a board between the driest and the wettest of the year.`
}

/** What iron does to the timbers that it is known to stain. */
function stainWords(spec: GateSpec): string[] {
  const stained = sectionsOf(spec).flatMap(([, { species }]) => {
    const timber = timberNamed(species, spec.timbers)
    return timber?.stainsIron?.value ? [timber.name] : []
  })
  const names = [...new Set(stained)]
  if (names.length === 0) return []
  return [
    `Iron stains ${listed(names)} where it is wet: keep steel wool, filings and plain steel away, and let anything you add be stainless.`,
  ]
}

function timberPart(input: JobCardInput): CarePart {
  const { it } = speaking(input)
  return {
    title: 'The timber and the weather',
    words: [
      `Boards swell across their width in the wet and shrink in the dry.${reckoned(input)} Joints that open a little in a dry spell and close in a wet one are as they should be, and so is a latch that is a little tighter in winter.`,
      `Keep soil, leaves and plants away from ${it} at the foot: wood that can dry lasts.`,
      ...stainWords(input.spec),
    ],
  }
}

/** The finish as far as it is known; room is left to write it in where it isn't. */
function finishPart(input: JobCardInput): CarePart {
  const finish = input.handover?.finish
  const renew =
    'Look at the foot, the end grain and the sunny side every spring, and put on a fresh coat before the old one wears through: clean, dry, and as the tin says.'
  const title = 'Finish'
  if (finish === null)
    return {
      title,
      words: [
        'Left bare: it weathers to grey, which is colour only. Should you want a finish on it, put it on clean, dry timber, end grain first, and keep it up.',
      ],
    }
  if (finish !== undefined) {
    const coats = `${finish.coats} ${finish.coats === 1 ? 'coat' : 'coats'}`
    return { title, words: [`${finish.name}, ${coats}, put on at the workshop. ${renew}`] }
  }
  return { title, words: [`If it has a finish: ${renew.charAt(0).toLowerCase()}${renew.slice(1)}`] }
}

/** Hinges, latch, lock and bolts as far as the gate has them, and its fixings. */
function movingPart(input: JobCardInput): CarePart {
  const { spec } = input
  const oiled = [
    'the hinge pins',
    ...(has(spec, 'latch') ? ['the latch'] : []),
    ...(has(spec, 'bolt') ? ['the bolts'] : []),
  ]
  const fixed = spec.fixings.kind === 'nail' ? 'nails' : 'screws'
  return {
    title: 'Hinges and fixings',
    words: [
      `Oil ${listed(oiled)} spring and autumn.${
        has(spec, 'lock') ? ' A lock likes a little graphite in the keyhole rather than oil.' : ''
      }`,
      ...(has(spec, 'bolt')
        ? ['Keep the holes that the bolts drop or shoot into clear, and draw every bolt before you open.']
        : []),
      `Once a year look at hinges, ${fixed} and bolts, and tighten what has worked loose. If it drags or drops, tell us before it is forced.`,
    ],
  }
}

/** Mass as it is told: to the half kilogram, ten percent either way. */
function weight({ design }: JobCardInput): string {
  const kg = design.leaves.map(({ massKg }) => Math.round(massKg))
  const [first] = kg
  if (first === undefined || first === 0) return ''
  const all = kg.every((one) => one === first) ? `about ${first} kg` : `about ${listed(kg.map(String))} kg`
  return kg.length > 1
    ? ` The two weigh ${all}${kg.every((one) => one === first) ? ' each' : ''}.`
    : ` It weighs ${all}.`
}

function safetyPart(input: JobCardInput): CarePart {
  const { spec } = input
  const { it, called } = speaking(input)
  return {
    title: 'Safety',
    words: [
      `Keep fingers, and children, clear of the hinges and the closing edge when ${it === 'it' ? 'it moves' : 'they move'}; no one should swing or climb on ${it}. Fasten ${it} open or shut in wind.${weight(input)} Lifting off its hinges is work for two.`,
      `Made to be moved by hand: don’t fit a motor to ${it === 'it' ? `this ${called}` : `these ${called}`}. A powered gate, and one on a public way, comes under rules of its own and wants a competent installer.`,
      ...(hasTreatedTimber(spec)
        ? [
            'Its timber is treated: never burn offcuts or dust from it, wear gloves and a mask to cut it, and brush preservative on every fresh cut.',
          ]
        : []),
    ],
  }
}

/** All that the note says of living with the gate, in the order it is read. Usual advice of the trade (common practice); sizes from the design. */
export const careParts = (input: JobCardInput): CarePart[] => [
  timberPart(input),
  finishPart(input),
  movingPart(input),
  safetyPart(input),
]
