import type { Check } from '../gate/checks.ts'
import type { GateSpec } from '../gate/spec.ts'
import { gather, type Worked } from '../gate/worked.ts'
import { bareLeaf } from '../timber/advice.ts'
import { metalAdvice } from '../timber/fixingMetal.ts'
import { finishOf } from './catalogue.ts'
import { checkClosing } from './closingChecks.ts'
import { checkHinges, noHinges } from './hingeChecks.ts'
import { placePieces, type PlacedPiece } from './placePieces.ts'
import type { WeighedLeaf } from './propose.ts'
import { metalOfFinish, timbersUnder } from './wantedFinish.ts'

/** A finish that the gate's timber eats or is stained by, for the pieces whose finish is known. */
function metalChecks(spec: GateSpec): Check[] {
  const timbers = timbersUnder(spec)
  return spec.ironmongery.flatMap((piece, entry): Check[] => {
    const finish = finishOf(piece.id)
    if (!finish) return []
    const advice = timbers.flatMap((timber) => metalAdvice(timber, bareLeaf, metalOfFinish[finish]))[0]
    if (!advice) return []
    return [
      {
        id: 'ironmongery-metal',
        level: advice.level,
        message: `${piece.name}: ${advice.message}`,
        remedy: `${advice.remedy} (${advice.source}.)`,
        figures: [],
        field: `ironmongery.${entry}.id`,
      },
    ]
  })
}

/**
 * Everything the ironmongery chosen is checked for, with the figures the checks rest on. The person may overrule all of it: cautions and
 * notes only, never a stop. placed: the pieces in their places, where they were found already (on the very leaves of weighed).
 */
export function ironmongeryChecks(
  spec: GateSpec,
  weighed: readonly WeighedLeaf[],
  placed: readonly PlacedPiece[] = placePieces(
    spec,
    weighed.map(({ leaf }) => leaf),
  ),
): Worked<null> {
  const leaves = weighed.map(({ leaf }) => leaf)
  const listed = spec.ironmongery.some(({ kind }) => kind === 'hinge')
  const hung = listed
    ? weighed.map(({ leaf, weight }) => checkHinges(spec, leaf, { weight, placed }))
    : [{ value: null, figures: {}, checks: [noHinges('leaf')] }]
  const { figures, checks } = gather(hung)
  return {
    value: null,
    figures,
    checks: [...checks, ...checkClosing(spec, leaves, placed), ...metalChecks(spec)],
  }
}
