import { pathOf } from '../gate/parseSpec.ts'
import { keysTo, placesIn } from '../gate/placesIn.ts'
import { bad, good, type Problem, type Result } from '../problem.ts'

/** How deep an open file may go. The proof of a plan is the deepest thing the book keeps: splits within splits. */
export const mostDepth = 450

const [quote, backslash, openList, closeList, openObject, closeObject] = [...'"\\[]{}'].map((mark) =>
  mark.charCodeAt(0),
)

const endOfText = (written: string, from: number): number => {
  let at = from + 1
  while (at < written.length && written.charCodeAt(at) !== quote)
    at += written.charCodeAt(at) === backslash ? 2 : 1
  return at
}

/** Whether a text goes deeper than may be, counted sign by sign before it is taken apart, so that a hostile one costs nothing. */
function isTooDeep(written: string): boolean {
  let depth = 0
  for (let at = 0; at < written.length; at += 1) {
    const sign = written.charCodeAt(at)
    if (sign === quote) at = endOfText(written, at)
    else if (sign === openList || sign === openObject) depth += 1
    else if (sign === closeList || sign === closeObject) depth -= 1
    if (depth > mostDepth) return true
  }
  return false
}

const reserved = new Set(['__proto__', 'prototype', 'constructor'])

const refused = (field: string, message: string): Problem => ({ code: 'refused', field, message })

/** What no file of ours holds: names that reach past an object's own, numbers past any. */
function strangeIn(tree: unknown): Problem | undefined {
  for (const place of placesIn(tree, mostDepth)) {
    const { key, value } = place
    if (key !== undefined && reserved.has(String(key)))
      return refused(pathOf(keysTo(place)), `got the name ‘${key}’, accepted here is any other`)
    if (typeof value === 'number' && !Number.isFinite(value))
      return refused(
        pathOf(keysTo(place)),
        'got a number past any that can be kept, accepted is a number of ordinary size',
      )
  }
  return undefined
}

/**
 * Takes an open file's text apart. Refused: what can't be read, goes deeper than 450, holds a number past any or a name that reaches past
 * an object's own; each with where it stands.
 */
export function readTree(written: string): Result<unknown> {
  if (isTooDeep(written))
    return bad(refused('', `got lists within lists deeper than ${mostDepth}, accepted is up to ${mostDepth}`))
  try {
    const value: unknown = JSON.parse(written)
    const strange = strangeIn(value)
    return strange ? bad(strange) : good(value)
  } catch (error) {
    if (!(error instanceof SyntaxError)) throw error
    return bad(
      refused('', 'it can’t be read: it is cut short or was changed; accepted is a file as it was taken out'),
    )
  }
}
