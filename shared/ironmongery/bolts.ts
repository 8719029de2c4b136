import { inFinishes, type BoltEntry } from './entry.ts'

/**
 * Bolts: drop bolts into the ground, top bolts into a head, barrel bolts across. Invented examples, not any maker's: sizes typical of
 * the trade, names made up, to be replaced by what the workshop buys.
 */
const sizes = [
  { form: 'drop', length: 300, rod: 12, throw: 90, plate: 45, massKg: 0.6, screws: [6, 5, 60], socket: 18 },
  { form: 'drop', length: 450, rod: 16, throw: 120, plate: 55, massKg: 1.3, screws: [8, 6, 90], socket: 22 },
  { form: 'drop', length: 600, rod: 19, throw: 150, plate: 60, massKg: 2.1, screws: [8, 6, 120], socket: 25 },
  { form: 'top', length: 200, rod: 10, throw: 45, plate: 40, massKg: 0.35, screws: [6, 4.5, 50], socket: 13 },
  { form: 'top', length: 300, rod: 12, throw: 60, plate: 45, massKg: 0.6, screws: [6, 5, 60], socket: 16 },
  { form: 'top', length: 450, rod: 16, throw: 75, plate: 55, massKg: 1.2, screws: [8, 6, 90], socket: 20 },
  {
    form: 'barrel',
    length: 150,
    rod: 10,
    throw: 40,
    plate: 40,
    massKg: 0.3,
    screws: [6, 4.5, 40],
    socket: 13,
  },
  {
    form: 'barrel',
    length: 200,
    rod: 12,
    throw: 50,
    plate: 45,
    massKg: 0.45,
    screws: [6, 5, 55],
    socket: 15,
  },
] as const

const named = { drop: 'Lane drop bolt', top: 'Lane top bolt', barrel: 'Croft barrel bolt' } as const

export const bolts: readonly BoltEntry[] = inFinishes(
  sizes.map(({ form, length, rod, throw: shot, plate, massKg, screws, socket }) => ({
    id: `${form}-bolt-${length}`,
    name: `${named[form]} ${length}`,
    kind: 'bolt' as const,
    suits: 'either hand' as const,
    form,
    length,
    rod,
    throw: shot,
    plateWidth: plate,
    socket,
    massKg,
    screws: { count: screws[0], diameter: screws[1], spacing: screws[2] },
  })),
  ['black japanned', 'galvanised', 'stainless'],
)
