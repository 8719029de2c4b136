import { readFile, stat } from 'node:fs/promises'
import { longestSpecText } from '../../shared/gate/specText.ts'
import { bad, good, type Result } from '../../shared/problem.ts'

const problem = (code: string, message: string) => bad({ code, field: '', message })

/** Reads a file that should hold UTF-8 text: there, a file, not huge. what says which file is accepted: 'a spec file'. */
export async function readTextFile(path: string, what: string): Promise<Result<string>> {
  try {
    const found = await stat(path)
    if (!found.isFile()) return problem('no-file', `'${path}' is not a file, ${what} is accepted`)
    if (found.size > 4 * longestSpecText)
      return problem(
        'too-long',
        `'${path}' holds ${found.size} bytes, up to ${longestSpecText} characters are accepted`,
      )
    return good(new TextDecoder('utf-8', { fatal: true }).decode(await readFile(path)))
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : ''
    if (code === 'ERR_ENCODING_INVALID_ENCODED_DATA')
      return problem('not-text', `'${path}' is not UTF-8 text, ${what} as JSON is accepted`)
    return problem('unreadable', `'${path}' can’t be read (${code || 'unknown reason'}), ${what} is accepted`)
  }
}
