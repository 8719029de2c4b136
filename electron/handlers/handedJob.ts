import { good } from '../../shared/problem.ts'
import type { Handler } from './context.ts'

/** The job's file that was pressed in a folder, once; null where there is none, and always where the screens are in a browser. */
export const takeHandedJob: Handler<'job.handed'> = ({ handedJob }) => good(handedJob?.() ?? null)
