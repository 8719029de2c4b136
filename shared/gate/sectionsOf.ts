import type { DraftSpec, GateSpec, Section } from './spec.ts'

/** Every section of a gate with its path in the spec. */
export function sectionsOf(spec: GateSpec | DraftSpec): [string, Section][] {
  const found: [string, Section | undefined][] = [
    ['boards.section', spec.boards.section],
    ['ledges.section', spec.ledges.section],
    ['ledges.topSection', spec.ledges.topSection],
    ['braces.section', spec.braces?.section],
    ['frame.stile', spec.frame?.stile],
    ['frame.topRail', spec.frame?.topRail],
  ]
  return found.filter((entry): entry is [string, Section] => entry[1] !== undefined)
}
