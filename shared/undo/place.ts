import { entryOf, type Step } from './step.ts'

/** Where on the screens a deed shows: the place's address ('#/job/12/gate') and the entry there ('size.width'), '' for none. */
export type JobPlace = { address: string; field: string }

const jobFields = ['title', 'due']

const tables: Record<string, string> = {
  items: '#/prices',
  suppliers: '#/prices',
  supplies: '#/prices',
  rises: '#/prices',
  rack_pieces: '#/timber/rack',
  settings: '#/workshop',
  sections: '#/workshop',
  usual_gates: '#/workshop',
}

function cellOf(step: Step): string {
  const names = [...Object.keys(step.is ?? {}), ...Object.keys(step.was ?? {})]
  return names.find((name) => name.startsWith('entry.spec.')) ?? names[0] ?? ''
}

function jobPlace(step: Step, jobId: number): JobPlace {
  if (step.table === 'job_notes' || step.table === 'photographs')
    return { address: `#/job/${jobId}/notes`, field: '' }
  if (step.table === 'options') return { address: `#/job/${jobId}/price/options`, field: '' }
  if (step.table === 'work_done') return { address: `#/job/${jobId}/price/took`, field: '' }
  if (step.table === 'papers' || step.table === 'acceptances')
    return { address: `#/job/${jobId}/papers`, field: '' }
  if (step.table === 'customers')
    return { address: `#/job/${jobId}/customer`, field: `customer.${cellOf(step)}` }
  const cell = cellOf(step)
  if (cell === 'notes') return { address: `#/job/${jobId}/notes`, field: cell }
  if (jobFields.includes(cell)) return { address: `#/job/${jobId}/customer`, field: cell }
  const field = entryOf(cell)
  return { address: `#/job/${jobId}/gate`, field: field === cell && cell !== 'unit' ? '' : field }
}

/** Where a deed shows, by its first step. deedJob: the job that the deed as a whole belongs to. A job that isn't in the lists shows nowhere but in the job book. */
export function placeOf(steps: readonly Step[], deedJob: number | null): JobPlace {
  const first = steps.find(({ table }) => table !== 'jobs' || steps.length === 1) ?? steps[0]
  if (!first) return { address: '#/jobs', field: '' }
  if (steps.some(({ table, was, is }) => table === 'jobs' && (was === null || is === null)))
    return { address: '#/jobs', field: '' }
  if (first.table.startsWith('order')) return { address: '#/timber', field: '' }
  const known = tables[first.table]
  if (known !== undefined) return { address: known, field: '' }
  const jobId = first.jobId ?? deedJob
  return jobId === null ? { address: '#/jobs', field: '' } : jobPlace(first, jobId)
}
