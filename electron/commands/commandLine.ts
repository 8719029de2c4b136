import { parseArgs } from 'node:util'
import type { PaperFormat } from '../../shared/papers/page.ts'
import { bad, problemLine, type Problem, type Result } from '../../shared/problem.ts'

/** How a command ended: 0 done, 1 a fault of the program's own, 2 bad input, 3 the gate can't be made as entered. */
export type Ending = { code: 0 | 1 | 2 | 3; out: string; errors: string[] }

export const refused = (problems: Problem[]): Ending => ({
  code: 2,
  out: '',
  errors: problems.map(problemLine),
})

export type CardArguments = { specFile: string; outFolder: string | undefined; paper: PaperFormat }

/** Reads `SPEC.json [--out DIR] [--paper a4|letter]`. */
export function cardArguments(args: string[]): Result<CardArguments> {
  const problem = (field: string, message: string) => bad({ code: 'arguments', field, message })
  try {
    const { values, positionals } = parseArgs({
      args,
      options: { out: { type: 'string' }, paper: { type: 'string', default: 'a4' } },
      allowPositionals: true,
    })
    const [specFile, ...more] = positionals
    if (specFile === undefined || more.length > 0)
      return problem(
        'arguments',
        `got ${positionals.length} files, one spec file is accepted: SPEC.json [--out DIR] [--paper a4|letter]`,
      )
    if (values.paper !== 'a4' && values.paper !== 'letter')
      return problem('--paper', `got '${values.paper}', accepted is a4 or letter`)
    if (values.out === '') return problem('--out', 'got nothing, accepted is a folder')
    return { ok: true, value: { specFile, outFolder: values.out, paper: values.paper } }
  } catch (error) {
    return problem(
      'arguments',
      `${error instanceof Error ? error.message : 'unreadable'}; accepted is SPEC.json [--out DIR] [--paper a4|letter]`,
    )
  }
}

/** Whoever reads the output may have enough of it (`card … | head`): what is left has nowhere to go, and that is no fault. */
const readerGone = (error: NodeJS.ErrnoException): void => {
  if (error.code !== 'EPIPE') throw error
}

/** Writes an ending to the streams and leaves its code to the process. */
export function finish(ending: Ending): void {
  process.stdout.on('error', readerGone)
  process.stderr.on('error', readerGone)
  for (const line of ending.errors) process.stderr.write(`${line}\n`)
  if (ending.out !== '') process.stdout.write(ending.out)
  process.exitCode = ending.code
}
