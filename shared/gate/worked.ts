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

/** Figures and checks of several rules in one, in order. */
export function gather(parts: readonly Worked<unknown>[]): { figures: Figures; checks: Check[] } {
  return {
    figures: Object.assign({}, ...parts.map((part) => part.figures)) as Figures,
    checks: parts.flatMap((part) => part.checks),
  }
}
