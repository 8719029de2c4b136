import type { Fixing } from './leaf.ts'
import type { GateSpec, Section } from './spec.ts'

/** A part that fixings go through, with how many there are; key is its name in figure ids, field its entry in the spec. */
export type Member = { key: string; name: string; section: Section; quantity: number; field: string }

const isTop = (place: Fixing) => place.member === 'top ledge'

/** The parts of a gate that fixings go through: ledges (a top ledge of its own section apart) and braces. */
export function membersOf(spec: GateSpec, places: Fixing[]): Member[] {
  const { section, topSection } = spec.ledges
  const onLedges = places.filter((place) => place.joins === 'ledge')
  const members: Member[] = [
    {
      key: topSection ? 'lowerLedges' : 'ledges',
      name: topSection ? 'lower ledges' : 'ledges',
      section,
      quantity: onLedges.filter((place) => !topSection || !isTop(place)).length,
      field: 'ledges.section',
    },
  ]
  if (topSection)
    members.push({
      key: 'topLedge',
      name: 'top ledge',
      section: topSection,
      quantity: onLedges.filter(isTop).length,
      field: 'ledges.topSection',
    })
  if (spec.braces)
    members.push({
      key: 'braces',
      name: 'braces',
      section: spec.braces.section,
      quantity: places.length - onLedges.length,
      field: 'braces.section',
    })
  return members
}
