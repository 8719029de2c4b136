import type { WorkStage, WorkStands } from '../../shared/keeping/workStands.ts'
import { guessLeft } from '../components/stageClock.ts'

const doing: Record<WorkStage, string> = {
  'looking through': 'Looking the book through for damage',
  copying: 'Copying',
  carrying: 'Writing the copy there',
  'reading back': 'Reading back what was written',
  'going over': 'Going over the papers',
  'reading out': 'Reading out what can be read',
}

const megabytes = (bytes: number): string => String(Math.round(bytes / 1e6))

/** What is going on, with how far it is: 'Copying: 120 of 840 MB', 'Going over the papers: 80 of 912'. */
export function stageWords({ what, done, of }: WorkStands): string {
  const reached = Math.min(done, of)
  if (of === 0) return doing[what]
  if (what === 'going over' || what === 'reading out') return `${doing[what]}: ${reached} of ${of}`
  return `${doing[what]}: ${megabytes(reached)} of ${megabytes(of)} MB`
}

/** A guess of what is left of this stage, ms; undefined until a second of it, and a fiftieth part, has gone by. */
export const stageLeft = (work: WorkStands, elapsedMs: number): number | undefined =>
  guessLeft(work, elapsedMs, work.of / 50)
