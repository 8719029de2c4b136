/** Names that would reach past an object's own keys. No path may hold one. */
const reserved = new Set(['__proto__', 'prototype', 'constructor'])

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

const isPlace = (key: string, list: readonly unknown[]): boolean =>
  /^\d{1,4}$/.test(key) && Number(key) <= list.length

/** As deep as anything in a gate goes, with room to spare. */
const deepest = 32

/**
 * Whether a value holds a key that reaches past an object's own; one too deep to be walked through counts as one that does. What it holds several
 * times (or in a circle) is looked through once, so that none takes long.
 */
export function holdsReservedKey(value: unknown, depth = 0, seen = new Set<unknown>()): boolean {
  if (typeof value !== 'object' || value === null || seen.has(value)) return false
  if (depth > deepest) return true
  seen.add(value)
  return Object.entries(value).some(
    ([key, inner]) => reserved.has(key) || holdsReservedKey(inner, depth + 1, seen),
  )
}

/** What stands at a path of keys, or undefined. valueAt(spec, ['size', 'width']) is 1803.4. */
export function valueAt(within: unknown, path: readonly string[]): unknown {
  const [key, ...rest] = path
  if (key === undefined) return within
  if (typeof within !== 'object' || within === null || reserved.has(key) || !Object.hasOwn(within, key))
    return undefined
  return valueAt((within as Record<string, unknown>)[key], rest)
}

/**
 * Whether a path leads through things that can hold it: objects (also ones still to be made) and lists up to one past
 * their end. A path through a number or a text leads nowhere.
 */
export function canHold(within: unknown, path: readonly string[]): boolean {
  const [key, ...rest] = path
  if (key === undefined) return true
  if (reserved.has(key)) return false
  if (within === undefined) return canHold(undefined, rest)
  if (Array.isArray(within)) return isPlace(key, within) && canHold(within[Number(key)], rest)
  if (!isRecord(within)) return false
  return canHold(Object.hasOwn(within, key) ? within[key] : undefined, rest)
}

/**
 * The same with another value at the path, everything else as it was; undefined takes the key (or the list's item) out.
 * Ask `canHold` first.
 */
export function placedAt(within: unknown, path: readonly string[], value: unknown): unknown {
  const [key, ...rest] = path
  if (key === undefined) return value
  if (Array.isArray(within)) {
    const inner = placedAt(within[Number(key)], rest, value)
    const list: unknown[] = [...within]
    if (inner === undefined) list.splice(Number(key), 1)
    else list[Number(key)] = inner
    return list
  }
  const record = isRecord(within) ? within : {}
  const { [key]: standing, ...others } = record
  const inner = placedAt(standing, rest, value)
  if (inner === undefined) return within === undefined ? undefined : others
  return { ...record, [key]: inner }
}

/** Whether two values from the book or the window are the same, whatever the order of their keys. Absent counts as null. */
export function sameValue(a: unknown, b: unknown): boolean {
  if (Object.is(a ?? null, b ?? null)) return true
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false
  if (Array.isArray(a) !== Array.isArray(b)) return false
  const keys = new Set([...Object.keys(a), ...Object.keys(b)])
  return [...keys].every((key) =>
    sameValue((a as Record<string, unknown>)[key], (b as Record<string, unknown>)[key]),
  )
}
