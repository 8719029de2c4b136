import { bad, type Problem, type Result } from '../problem.ts'

/** Longest spec file that is read, characters, and deepest nesting: far past any gate. */
export const longestSpecText = 1_000_000
export const deepestNesting = 32

const problem = (code: string, message: string): Problem => ({ code, field: '', message })

/** How deep brackets nest in a JSON text, texts inside it left out. */
function nesting(text: string): number {
  let [depth, deepest, quoted] = [0, 0, false]
  for (let i = 0; i < text.length; i += 1) {
    const character = text[i]
    if (quoted) {
      if (character === '\\') i += 1
      else if (character === '"') quoted = false
    } else if (character === '"') quoted = true
    else if (character === '{' || character === '[') deepest = Math.max(deepest, (depth += 1))
    else if (character === '}' || character === ']') depth -= 1
  }
  return deepest
}

/**
 * Reads JSON text from outside, within limits, before anything looks at what it says. A byte-order mark is passed over. what says what the text
 * should be.
 */
export function parseSpecText(text: string, what = 'a gate spec'): Result<unknown> {
  const body = text.startsWith('\uFEFF') ? text.slice(1) : text
  if (body.length > longestSpecText)
    return bad(problem('too-long', `${body.length} characters came, up to ${longestSpecText} are accepted`))
  if (body.trim() === '') return bad(problem('empty', `the file is empty, ${what} as JSON is accepted`))
  if (nesting(body) > deepestNesting)
    return bad(
      problem('too-deep', `brackets nest deeper than ${deepestNesting}, ${what} as JSON is accepted`),
    )
  try {
    return { ok: true, value: JSON.parse(body) as unknown }
  } catch (error) {
    const why = error instanceof SyntaxError ? error.message.slice(0, 120) : 'unreadable'
    return bad(problem('not-json', `not JSON (${why}), ${what} as JSON is accepted`))
  }
}
