import type { Check } from '../gate/checks.ts'
import { geometry, type Figures } from '../gate/figures.ts'
import type { GateSpec } from '../gate/spec.ts'
import { figure, type Worked } from '../gate/worked.ts'
import { writeShortMm } from '../units/writeLength.ts'
import { fittingPrefix } from './fittings.ts'
import { reckonedFigure, strapWanted } from './hingeRules.ts'
import { strapOf } from './pieceSize.ts'
import type { PlacedPiece } from './placePieces.ts'
import { spacingOf, type LeafWeight } from './proposeHinge.ts'

/** The hinges of one leaf, bottom up, with the leaf's weight and the ids its figures begin with. */
type Hung = { spec: GateSpec; hinges: readonly PlacedPiece[]; weight: LeafWeight; prefix: string }

const mm = (length: number): string => `${writeShortMm(length)} mm`
const kg = (mass: number): string => `${writeShortMm(mass)} kg`

const caution = (
  id: string,
  said: { message: string; remedy: string; field: string; figures: string[] },
): Check => ({ id, level: 'caution', ...said })

/** A strap no longer than half the leaf leaves its closing half unheld; one longer than the leaf runs off it. */
function strapChecks({ hinges, prefix }: Hung): Check[] {
  const told = new Set<number>()
  return hinges.flatMap(({ piece, entry, leaf }, index): Check[] => {
    if (told.has(entry)) return []
    told.add(entry)
    const { strapLength } = strapOf(piece)
    const wanted = strapWanted(leaf.width)
    const said = {
      figures: [`${prefix}.hinge.${index + 1}.strapWanted`],
      field: `ironmongery.${entry}.strapLength`,
    }
    if (strapLength > leaf.width)
      return [
        caution('hinge-strap-long', {
          ...said,
          message: `${piece.name}: its strap of ${mm(strapLength)} is longer than the leaf is wide, ${mm(leaf.width)}.`,
          remedy: `Take a strap over ${mm(wanted)} and under ${mm(leaf.width)}.`,
        }),
      ]
    if (strapLength > wanted) return []
    return [
      caution('hinge-strap-short', {
        ...said,
        message: `${piece.name}: its strap of ${mm(strapLength)} is not over half the leaf’s width of ${mm(leaf.width)}.`,
        remedy: `Take a strap longer than ${mm(wanted)}.`,
      }),
    ]
  })
}

/** A hinge between ledges has only the boards to hold on to. */
const lineChecks = ({ hinges, prefix }: Hung): Check[] =>
  hinges.flatMap(({ piece, entry, height, line }, index) =>
    line
      ? []
      : [
          caution('hinge-off-ledge', {
            message: `The hinge at ${mm(height)} from the foot (${piece.name}) is on no ledge or rail.`,
            remedy: 'Put it on a ledge’s line, or move the ledge.',
            field: `ironmongery.${entry}.heights`,
            figures: [`${prefix}.hinge.${index + 1}.height`],
          }),
        ],
  )

/** Too few hinges, or so close together that they pull harder than the leaf weighs. */
function spacingChecks({ spec, hinges, weight, prefix }: Hung): Check[] {
  const entry = hinges[0]?.entry ?? 0
  if (hinges.length < 2)
    return [
      caution('hinge-single', {
        message: 'The leaf hangs on one hinge.',
        remedy: 'Hang it on two hinges at least.',
        field: `ironmongery.${entry}.quantity`,
        figures: [],
      }),
    ]
  const spacing = spacingOf(hinges.map(({ height }) => height))
  const out = weight.centreX - (spec.site?.pinInset ?? 0)
  if (spacing >= out) return []
  return [
    caution('hinges-close', {
      message: `The hinges are ${mm(spacing)} apart and the leaf’s weight hangs ${mm(out)} out: they pull harder than the leaf weighs.`,
      remedy: `Set the hinges ${mm(out)} apart or more.`,
      field: `ironmongery.${entry}.heights`,
      figures: [`${prefix}.hinges.spacing`],
    }),
  ]
}

/** A pair of hinges rated for less than the leaf, or for nobody knows what. The weakest hinge counts. */
function ratingChecks({ hinges, prefix }: Hung, reckoned: number): Check[] {
  const rated = hinges.filter(({ piece }) => piece.maxLeafMassKg !== undefined)
  const weakest = [...rated].sort((a, b) => (a.piece.maxLeafMassKg ?? 0) - (b.piece.maxLeafMassKg ?? 0))[0]
  const figures = [`${prefix}.hinges.reckonedKg`]
  if (!weakest)
    return [
      {
        id: 'hinge-no-rating',
        level: 'note',
        message: `Nothing says what leaf the hinges carry; this one counts as ${kg(reckoned)}.`,
        remedy: 'Ask for the maker’s rating, or take hinges that have one.',
        field: `ironmongery.${hinges[0]?.entry ?? 0}.maxLeafMassKg`,
        figures,
      },
    ]
  const most = weakest.piece.maxLeafMassKg ?? 0
  if (most >= reckoned) return []
  return [
    caution('hinge-rating', {
      message: `${weakest.piece.name} carries a leaf of ${kg(most)} by its rating; this one counts as ${kg(reckoned)}.`,
      remedy: `Take hinges rated for ${kg(Math.ceil(reckoned))} or more, set them farther apart, or make the leaf lighter.`,
      field: `ironmongery.${weakest.entry}.maxLeafMassKg`,
      figures,
    }),
  ]
}

/** Told where no hinge is listed, for a leaf by its name or for the whole gate ('leaf'). */
export const noHinges = (leaf: string): Check => ({
  id: 'hinge-none',
  level: 'note',
  message: `No hinge is listed${leaf === 'leaf' ? '' : ` for the ${leaf}`}: the pulls are worked out for hinges on the bottom and top lines.`,
  remedy: 'Choose hinges, or take those proposed.',
  field: 'ironmongery',
  figures: [],
})

/** What there is to say of one leaf's hinges, with the spacing and the mass that the rating is held against as figures. */
export function checkHinges(
  spec: GateSpec,
  leaf: PlacedPiece['leaf'],
  { weight, placed }: { weight: LeafWeight; placed: readonly PlacedPiece[] },
): Worked<null> {
  const hinges = placed.filter((one) => one.leaf === leaf && one.piece.kind === 'hinge')
  if (hinges.length === 0) return { value: null, figures: {}, checks: [noHinges(leaf.name)] }
  const prefix = fittingPrefix(leaf.name)
  const hung: Hung = { spec, hinges, weight, prefix }
  const heights = hinges.map(({ height }) => height)
  const spacing = spacingOf(heights)
  const figures: Figures = {}
  const { massKg } = weight
  if (spacing > 0) {
    figures[`${prefix}.hinges.spacing`] = figure(spacing, 'mm', {
      formula: 'top hinge − bottom hinge',
      inputs: { 'top hinge': Math.max(...heights), 'bottom hinge': Math.min(...heights) },
      source: geometry,
    })
    const centreOut = weight.centreX - (spec.site?.pinInset ?? 0)
    figures[`${prefix}.hinges.reckonedKg`] = reckonedFigure({ massKg, centreOut, spacing })
  } else
    figures[`${prefix}.hinges.reckonedKg`] = figure(massKg, 'kg', {
      formula: 'the leaf’s mass, one hinge having no spacing',
      inputs: { 'mass kg': massKg },
      source: geometry,
    })
  const reckoned = figures[`${prefix}.hinges.reckonedKg`]?.value ?? massKg
  return {
    value: null,
    figures,
    checks: [
      ...strapChecks(hung),
      ...ratingChecks(hung, reckoned),
      ...lineChecks(hung),
      ...spacingChecks(hung),
    ],
  }
}
