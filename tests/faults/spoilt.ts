import { hostileKey, hostileValue } from './hostileValues.ts'
import type { Chance } from './seeded.ts'

type Held = Record<string, unknown> | unknown[]
type Place = { within: Held; key: string }

const isHeld = (value: unknown): value is Held => {
  if (typeof value !== 'object' || value === null) return false
  return Array.isArray(value) || Object.getPrototypeOf(value) === Object.prototype
}

/** As deep as any request goes: what was put in deeper is hostile as it is. */
const deepest = 30

/** Every place in a payload where something stands; what stands in several is gone through once. */
function placesIn(within: unknown, depth = 0, seen = new Set<unknown>()): Place[] {
  if (!isHeld(within) || depth > deepest || seen.has(within)) return []
  seen.add(within)
  return Object.entries(within).flatMap(([key, value]) => [
    { within, key },
    ...placesIn(value, depth + 1, seen),
  ])
}

const standing = ({ within, key }: Place): unknown => Object.entries(within).find(([one]) => one === key)?.[1]

/** Puts a value under a key of the object itself, also one that every object has already. */
const put = (within: Held, key: string, value: unknown): boolean =>
  Reflect.defineProperty(within, key, { value, writable: true, enumerable: true, configurable: true })

/** The same kind of value, a little off. */
function nearly(value: unknown, chance: Chance): unknown {
  if (typeof value === 'number')
    return chance.oneOf([value + 0.5, -value, value * 1e9, value + 1, 0, `${value}`, [value]])
  if (typeof value === 'string')
    return chance.oneOf([
      `${value} `,
      value.slice(0, 5000).repeat(400),
      value.toUpperCase(),
      [value],
      { value },
      Number(value),
    ])
  if (typeof value === 'boolean') return chance.oneOf([!value, `${value}`, Number(value)])
  return value === null ? hostileValue(chance) : [value]
}

type Spoiling = (place: Place, chance: Chance) => void

const spoilings: Spoiling[] = [
  ({ within, key }, chance) => put(within, key, hostileValue(chance)),
  (place, chance) => put(place.within, place.key, nearly(standing(place), chance)),
  ({ within, key }) => void Reflect.deleteProperty(within, key),
  ({ within }, chance) => put(within, hostileKey(chance), hostileValue(chance)),
  ({ within, key }, chance) => {
    const value = standing({ within, key })
    Reflect.deleteProperty(within, key)
    put(within, hostileKey(chance), value)
  },
  (place) => {
    const value = standing(place)
    if (Array.isArray(value)) put(place.within, place.key, { ...value })
    else if (isHeld(value)) put(place.within, place.key, Object.values(value))
  },
  (place, chance) => {
    const value = standing(place)
    const count = chance.oneOf([0, 2, 60, 1500, 6000])
    if (Array.isArray(value))
      put(
        place.within,
        place.key,
        Array.from({ length: count }, () => value[0] as unknown),
      )
  },
  ({ within }) => {
    if (Array.isArray(within)) within.push(...[...within].slice(0, 2000))
  },
]

/** A payload that was right, spoilt in one place to three; or one that never was. */
export function spoilt(right: unknown, chance: Chance): unknown {
  if (chance.next() < 0.08) return hostileValue(chance)
  const payload: unknown = structuredClone(right)
  const times = 1 + chance.below(3)
  for (let turn = 0; turn < times; turn += 1) {
    const places = placesIn(payload).slice(0, 4000)
    if (places.length > 0) chance.oneOf(spoilings)(chance.oneOf(places), chance)
    else if (isHeld(payload)) put(payload, hostileKey(chance), hostileValue(chance))
  }
  return payload
}
