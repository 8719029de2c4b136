import type { Check } from './checks.ts'
import type { Figure, Figures } from './figures.ts'

/** What a rule gives: the parts, the worked figures behind them, and what was found on the way. */
export type Worked<T> = { value: T; figures: Figures; checks: Check[] }

/** A figure in one line. */
export const figure = (
  value: number,
  unit: string,
  how: { formula: string; inputs: Record<string, number>; source: string },
): Figure => ({ value, unit, ...how })

/**
 * Figures of several rules in one, later ones over earlier ones of the same id, each id with a prefix before it. Without a prototype, since an object that starts so takes
 * hundreds of ids several times faster than one that starts as a literal.
 */
export function joined(parts: readonly Figures[], prefix = ''): Figures {
  const all = Object.create(null) as Figures
  for (const part of parts) for (const id in part) all[prefix === '' ? id : prefix + id] = part[id] as Figure
  return all
}

/** A check with the ids of its figures under a leaf's prefix. */
const underPrefix = (check: Check, prefix: string): Check => ({
  ...check,
  figures: check.figures.map((id) => prefix + id),
})

/** Figures and checks of several rules in one, in order, the figures' ids with a leaf's prefix before them. */
export function gather(
  parts: readonly Worked<unknown>[],
  prefix = '',
): { figures: Figures; checks: Check[] } {
  const checks = parts.flatMap((part) => part.checks)
  return {
    figures: joined(
      parts.map((part) => part.figures),
      prefix,
    ),
    checks: prefix === '' ? checks : checks.map((check) => underPrefix(check, prefix)),
  }
}

/** Ids of a leaf's figures with its own prefix, in the figures and in the checks that name them. */
export const prefixed = <T>(worked: Worked<T>, prefix: string): Worked<T> =>
  prefix === '' ? worked : { value: worked.value, ...gather([worked], prefix) }
