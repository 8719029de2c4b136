import { basename, extname } from 'node:path'
import { design } from '../../shared/gate/design.ts'
import { isStop } from '../../shared/gate/checks.ts'
import type { Design } from '../../shared/gate/designModel.ts'
import type { GateSpec } from '../../shared/gate/spec.ts'
import type { Sheet } from '../handlers/context.ts'
import { cardArguments, type CardArguments, refused, type Ending } from './commandLine.ts'
import { readSpecFile } from './readSpec.ts'
import { writeFiles } from './writeFiles.ts'

const printed = (what: unknown): string => `${JSON.stringify(what, null, 2)}\n`

/** What each paper's file is called. */
const files: [Sheet, string][] = [
  ['job card', 'job-card.pdf'],
  ['fitting sheet', 'fitting-sheet.pdf'],
  ['worked figures', 'worked-figures.pdf'],
  ['part labels', 'part-labels.pdf'],
  ['care note', 'care-note.pdf'],
  ['full-size sheets', 'full-size-sheets.pdf'],
]

/** The papers of a spec with no job behind it: the file's own name stands for the title. */
async function papers(
  { specFile, paper }: CardArguments,
  spec: GateSpec,
  made: Design,
): Promise<{ name: string; bytes: Uint8Array }[]> {
  // Painting loads fonts and a PDF library, which a run without papers shouldn't wait for.
  const { makeCard } = await import('../makeCard.ts')
  const nobody = { name: '', address: '', town: '', phone: '', email: '' }
  const header = {
    workshop: '',
    number: '',
    title: basename(specFile, extname(specFile)),
    customer: nobody,
    due: null,
    notes: '',
    revision: 1,
    issuedAt: null,
  }
  const input = { header, spec, design: made, unit: 'mm' as const, format: paper, draft: false }
  return Promise.all(
    files.map(async ([sheet, name]) => ({ name, bytes: (await makeCard(input, sheet)).bytes })),
  )
}

/** `card SPEC.json [--out DIR] [--paper a4|letter]`: the design as JSON, and with --out the job card and the sheets that go with it as PDF. Gives what to print and how to end. */
export async function runCard(args: string[]): Promise<Ending> {
  const read = cardArguments(args)
  if (!read.ok) return refused(read.problems)
  const { specFile, outFolder } = read.value
  const spec = await readSpecFile(specFile)
  if (!spec.ok) return refused(spec.problems)
  const outcome = design(spec.value)
  if (!outcome.made) {
    const stops = outcome.stopped.checks.filter(isStop)
    return {
      code: 3,
      out: printed(outcome.stopped),
      errors: stops.map((stop) => `${stop.field}: ${stop.message} ${stop.remedy}`),
    }
  }
  if (outFolder !== undefined) {
    const written = await writeFiles(outFolder, await papers(read.value, spec.value, outcome.design))
    if (!written.ok) return refused(written.problems)
  }
  return { code: 0, out: printed(outcome.design), errors: [] }
}
