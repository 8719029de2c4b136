import { bad, type Result } from '../../shared/problem.ts'

/** As deep as any text of a request stands, with room to spare. */
const deepest = 32

type Place = { path: string; depth: number }

/** Where in what was sent a text holds U+0000, as a path ('supplier.name'); undefined where none does. Circles are walked once. */
function nulPlace(
  input: unknown,
  { path, depth }: Place = { path: '', depth: 0 },
  seen = new Set<unknown>(),
): string | undefined {
  if (typeof input === 'string') return input.includes('\0') ? path : undefined
  if (typeof input !== 'object' || input === null || depth > deepest || seen.has(input)) return undefined
  seen.add(input)
  const isList = Array.isArray(input)
  for (const [key, value] of Object.entries(input)) {
    const below = isList ? `${path}[${key}]` : path === '' ? key : `${path}.${key}`
    const found = nulPlace(value, { path: below, depth: depth + 1 }, seen)
    if (found !== undefined) return found
  }
  return undefined
}

/**
 * The refusal of a request with U+0000 in a text, or undefined. Nothing is written with it, and the book's file takes a text to end there: a name that
 * begins with it is none.
 */
export function unwritable(payload: unknown): Result<never> | undefined {
  const field = nulPlace(payload)
  if (field === undefined) return undefined
  return bad({
    code: 'refused',
    field,
    message:
      'got a text with a character that nothing is written with (U+0000), accepted are letters, figures and signs',
  })
}
