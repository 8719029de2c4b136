import type { Timber } from '../gate/spec.ts'
import { fact, type Fact } from './fact.ts'
import { coefficientFromShrinkage, shrinkageFromCoefficient } from './shrinkage.ts'
import { strengthClass } from './strengthClasses.ts'
import { byRelation, usualStart, type ListedTimber, type TimberFacts } from './timberFacts.ts'

const workshop = 'this workshop’s setting'
const set = <T>(value: T): Fact<T> => fact(value, workshop, 'workshop')
const worked = (value: number): Fact<number> => fact(value, `${workshop}, by ${byRelation}`, 'workshop')

/**
 * Movement as the workshop gives it: a coefficient alone settles the shrinkage that goes with it, a shrinkage alone its
 * coefficient, so that the two forms never tell of different timbers. Both given, both stand.
 */
function ownMovement(own: Timber, start: number): Partial<TimberFacts> {
  const { tangential, shrinkage, radial } = own
  const out: Partial<TimberFacts> = {}
  if (tangential !== undefined) {
    out.tangential = set(tangential)
    out.tangentialShrinkage = worked(shrinkageFromCoefficient(tangential, start))
  }
  if (shrinkage !== undefined) {
    out.tangentialShrinkage = set(shrinkage)
    if (tangential === undefined) out.tangential = worked(coefficientFromShrinkage(shrinkage, start))
  }
  if (radial !== undefined) {
    out.radial = set(radial)
    out.radialShrinkage = worked(shrinkageFromCoefficient(radial, start))
  }
  return out
}

/** Density by the workshop's word, else the listed one, else the mean of the strength class it gives. */
function densityOf(own: Timber, listed: ListedTimber | undefined): Fact<number> | undefined {
  if (own.density !== undefined) return set(own.density)
  if (listed) return listed.density
  const grade = own.strengthClass === undefined ? undefined : strengthClass(own.strengthClass)
  return (
    grade &&
    fact(grade.value.density, `${grade.source}, mean density of ${grade.value.name}`, grade.certainty)
  )
}

function isHardwood(own: Timber, density: number, listed: ListedTimber | undefined): boolean {
  if (listed) return listed.hardwood
  const grade = own.strengthClass?.trim().toUpperCase()
  return grade === undefined ? density > 600 : grade.startsWith('D')
}

/** A listed timber as the rules meet it, untreated. */
export function plainTimber({ alsoCalled: _other, ...listed }: ListedTimber): TimberFacts {
  return { ...listed, treated: false }
}

/**
 * A timber with the workshop's own values before the listed ones. Undefined when nothing tells its density.
 * Its movement starts at 30 % unless the list knows better.
 */
export function describedTimber(
  name: string,
  own: Timber,
  listed: ListedTimber | undefined,
): TimberFacts | undefined {
  const density = densityOf(own, listed)
  if (!density) return undefined
  const start = listed?.movementStart ?? usualStart
  return {
    ...(listed ? plainTimber(listed) : { name }),
    hardwood: isHardwood(own, density.value, listed),
    density,
    movementStart: start,
    ...ownMovement(own, start.value),
    ...(own.strengthClass === undefined ? {} : { strengthClass: set(own.strengthClass) }),
    ...(own.stainsIron === undefined ? {} : { stainsIron: set(own.stainsIron) }),
    ...(own.fixings === undefined ? {} : { fixings: set(own.fixings) }),
    ...(own.durability === undefined ? {} : { durability: set(own.durability) }),
    treated: own.treated ?? false,
  }
}
