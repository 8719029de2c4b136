import { parseSpec } from '../../shared/gate/parseSpec.ts'
import type { GateSpec } from '../../shared/gate/spec.ts'
import { parseSpecText } from '../../shared/gate/specText.ts'
import type { Result } from '../../shared/problem.ts'
import { readTextFile } from './readTextFile.ts'

/** Reads a spec file: there, a file, not huge, text, JSON, a spec. */
export async function readSpecFile(path: string): Promise<Result<GateSpec>> {
  const text = await readTextFile(path, 'a spec file')
  if (!text.ok) return text
  const parsed = parseSpecText(text.value)
  return parsed.ok ? parseSpec(parsed.value) : parsed
}
