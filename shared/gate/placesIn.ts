/** As deep as any spec or request goes, with room to spare; deeper, the schema refuses what stands there. */
const usualDepth = 32

type Key = string | number

/** One place in what came from outside: what stands there, under which key, and in what. The whole has no key. */
export type InputPlace = { value: unknown; depth: number; key?: Key; above?: InputPlace }

/** The keys that lead to a place, outermost first. */
export const keysTo = ({ key, above }: InputPlace): Key[] =>
  key === undefined || above === undefined ? [] : [...keysTo(above), key]

/** What a list or an object holds, each under its key, the last first. Never by a list's own methods: they make what its 'constructor' says. */
function heldBackwards(above: InputPlace): InputPlace[] {
  const { value } = above
  if (typeof value !== 'object' || value === null) return []
  const isList = Array.isArray(value)
  return Object.entries(value)
    .map(([name, held]): InputPlace => {
      const key = isList && /^\d+$/.test(name) ? Number(name) : name
      return { value: held, depth: above.depth + 1, key, above }
    })
    .reverse()
}

/**
 * Every place in an input down to a depth: the whole, then each list and object before what it holds. What it holds several times (or in a circle) is
 * gone into once.
 */
export function* placesIn(input: unknown, deepest = usualDepth): Generator<InputPlace, void> {
  const seen = new Set<unknown>()
  const ahead: InputPlace[] = [{ value: input, depth: 0 }]
  for (let place = ahead.pop(); place; place = ahead.pop()) {
    yield place
    if (place.depth > deepest || seen.has(place.value)) continue
    if (typeof place.value === 'object') seen.add(place.value)
    for (const held of heldBackwards(place)) ahead.push(held)
  }
}
