import { commonPractice, workshopSetting, type Figure, type Figures } from '../gate/figures.ts'
import type { Leaf, LeafName } from '../gate/leaf.ts'
import { leafPrefix } from '../gate/leafPrefix.ts'
import type { GateSpec } from '../gate/spec.ts'
import { workshopOf } from '../gate/standardSpec.ts'
import { figure, joined, type Worked } from '../gate/worked.ts'
import { catalogueSource, entryOf } from './catalogue.ts'
import { boltHole, drillingsOf, screwLead, woodLeft, woodUnder } from './drillings.ts'
import type { Drilling, Fitting } from './fitting.ts'
import { strapFigure } from './hingeRules.ts'
import { placePieces, type PlacedPiece } from './placePieces.ts'
import { strapOf, surfaceOf } from './pieceSize.ts'
import { shapesOf } from './shapes.ts'
import { socketFigures, socketPlaceOf } from './socket.ts'

/** The id that a leaf's figures of ironmongery begin with, e.g. 'second.fitting'. */
export const fittingPrefix = (name: LeafName): string => `${leafPrefix[name]}fitting`

function holeFigure(spec: GateSpec, placed: PlacedPiece, { what, size }: Drilling): Figure {
  const { piece } = placed
  const { exact } = size
  const bolt = piece.kind === 'hinge' ? strapOf(piece).bolt : null
  if (what === 'bolt hole' && bolt)
    return figure(boltHole(spec, bolt.diameter), 'mm', {
      formula: 'bolt + the workshop’s clearance, 1 at most',
      inputs: { bolt: bolt.diameter, 'the workshop’s clearance': workshopOf(spec).clearance },
      source: `${workshopSetting}; EN 1995-1-1 §10.4.3, from memory`,
    })
  const screws = what === 'screw hole' ? screwLead(spec, placed) : undefined
  if (screws)
    return figure(exact, 'mm', {
      formula: screws.lead.formula,
      inputs: { root: screws.root, shank: screws.shank },
      source: screws.lead.source,
    })
  return figure(exact, 'mm', {
    formula: `${what} as listed`,
    inputs: { [what]: exact },
    source: catalogueSource,
  })
}

const word = (what: Drilling['what']): string =>
  what.replace(/ (\w)/, (_, first: string) => first.toUpperCase())

function figuresOf(spec: GateSpec, placed: PlacedPiece, drillings: Drilling[]): [string, Figure][] {
  const out: [string, Figure][] = [['height', placed.how]]
  for (const drilling of drillings) out.push([word(drilling.what), holeFigure(spec, placed, drilling)])
  const lead = drillings.find(({ what }) => what === 'screw hole')
  if (lead && lead.depth !== null)
    out.push([
      'screwDepth',
      figure(lead.depth, 'mm', {
        formula: 'wood under the piece − wood left',
        inputs: { 'wood under the piece': woodUnder(spec, placed), 'wood left': woodLeft },
        source: commonPractice,
      }),
    ])
  if (placed.piece.kind === 'hinge') out.push(['strapWanted', strapFigure(placed.leaf.width)])
  return [...out, ...socketFigures(spec, placed)]
}

function fit(spec: GateSpec, placed: PlacedPiece, id: string): { fitting: Fitting; figures: Figures } {
  const { piece, entry, leaf, side, height, line } = placed
  const drillings = drillingsOf(spec, placed)
  const figures = Object.fromEntries(
    figuresOf(spec, placed, drillings).map(([name, made]) => [`${id}.${name}`, made]),
  )
  return {
    fitting: {
      id: piece.id,
      entry,
      kind: piece.kind,
      name: piece.name,
      leaf: leaf.name,
      side,
      surface: surfaceOf(spec, piece.kind),
      height,
      on: line?.name ?? '',
      shapes: shapesOf(placed),
      drillings,
      socket: entryOf(piece.id, 'bolt')?.socket ?? null,
      socketPlace: socketPlaceOf(spec, placed),
      figures: Object.keys(figures),
    },
    figures,
  }
}

/**
 * Every piece of ironmongery on the leaves: where it lies, its shape for drawing, what to drill, and the worked figures behind each
 * ('fitting.hinge.1.height', on a pair's second leaf 'second.fitting.hinge.1.height', numbered bottom up by kind). placed: the pieces in their places, where they were found
 * already.
 */
export function fitIronmongery(
  spec: GateSpec,
  leaves: readonly Leaf[],
  placed: readonly PlacedPiece[] = placePieces(spec, leaves),
): Worked<Fitting[]> {
  const counts = new Map<string, number>()
  const fitted = placed.map((one) => {
    const kind = `${fittingPrefix(one.leaf.name)}.${one.piece.kind}`
    const number = (counts.get(kind) ?? 0) + 1
    counts.set(kind, number)
    return fit(spec, one, `${kind}.${number}`)
  })
  return {
    value: fitted.map(({ fitting }) => fitting),
    figures: joined(fitted.map(({ figures }) => figures)),
    checks: [],
  }
}
