/**
 * What gives way in the head of a job whose names are too long to stand beside each other, on a laptop or on any bench: the
 * name then stands alone, or with its town, instead of three stumps of words; the rest is read under Customer. Counted in
 * letters of the town's size, the name's being larger: 60 letters of a name are as long as 96 of a town.
 */
export function crowdedHead({ name, town }: { name: string; town: string }): string[] {
  const letters = name.length * 1.6 + town.length
  return [
    ...(letters > 74 ? ['only-name'] : letters > 62 ? ['only-town'] : []),
    ...(letters > 140 ? ['name-at-most'] : letters > 110 ? ['town-at-most'] : []),
  ]
}
