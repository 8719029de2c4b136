import { readFile, stat } from 'node:fs/promises'
import { parseSpec } from '../../shared/gate/parseSpec.ts'
import type { GateSpec } from '../../shared/gate/spec.ts'
import { longestSpecText, parseSpecText } from '../../shared/gate/specText.ts'
import { bad, type Result } from '../../shared/problem.ts'

const problem = (code: string, message: string) => bad({ code, field: '', message })

/** Reads a spec file: there, a file, not huge, text, JSON, a spec. */
export async function readSpecFile(path: string): Promise<Result<GateSpec>> {
  try {
    const found = await stat(path)
    if (!found.isFile()) return problem('no-file', `'${path}' is not a file, a spec file is accepted`)
    if (found.size > 4 * longestSpecText)
      return problem(
        'too-long',
        `'${path}' holds ${found.size} bytes, up to ${longestSpecText} characters are accepted`,
      )
    const bytes = await readFile(path)
    const text = new TextDecoder('utf-8', { fatal: true }).decode(bytes)
    const parsed = parseSpecText(text)
    return parsed.ok ? parseSpec(parsed.value) : parsed
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : ''
    if (code === 'ERR_ENCODING_INVALID_ENCODED_DATA')
      return problem('not-text', `'${path}' is not UTF-8 text, a spec file as JSON is accepted`)
    return problem(
      'unreadable',
      `'${path}' can't be read (${code || 'unknown reason'}), a spec file is accepted`,
    )
  }
}
