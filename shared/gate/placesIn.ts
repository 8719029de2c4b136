/** As deep as any spec or request goes, with room to spare; deeper, the schema refuses what stands there. */
const deepest = 32

type Key = string | number

/** One place in what came from outside: what stands there, under which key, and in what. The whole has no key. */
export type InputPlace = { value: unknown; depth: number; key?: Key; above?: InputPlace }

/** The keys that lead to a place, outermost first. */
export const keysTo = ({ key, above }: InputPlace): Key[] =>
  key === undefined || above === undefined ? [] : [...keysTo(above), key]

function* below(place: InputPlace, seen: Set<unknown>): Generator<InputPlace, void> {
  yield place
  const { value, depth } = place
  if (typeof value !== 'object' || value === null || depth > deepest || seen.has(value)) return
  seen.add(value)
  // Never by a list's own methods: they make what its 'constructor' says.
  const isList = Array.isArray(value)
  for (const [name, held] of Object.entries(value)) {
    const key = isList && /^\d+$/.test(name) ? Number(name) : name
    yield* below({ value: held, depth: depth + 1, key, above: place }, seen)
  }
}

/** Every place in an input: the whole, then each list and object before what it holds. What it holds several times (or in a circle) is gone into once. */
export const placesIn = (input: unknown): Generator<InputPlace, void> =>
  below({ value: input, depth: 0 }, new Set())
