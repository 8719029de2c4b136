import { good } from '../../shared/problem.ts'
import type { Handler } from './context.ts'
import { foundOr } from './missing.ts'

const deed = 'deed that can be taken back'

export const listDeeds: Handler<'undo.list'> = ({ book }, { jobId }) => good(book.undo.list(jobId))

/** Takes deeds back, all or none. What was changed again since is asked about first, and nothing is changed by asking. */
export const takeBack: Handler<'undo.back'> = ({ book }, meant) =>
  foundOr(book.undo.back(meant), 'upTo', deed)

/** Does deeds again that were taken back. */
export const doAgain: Handler<'undo.again'> = ({ book }, meant) =>
  foundOr(book.undo.again(meant), 'upTo', deed)

/** Whether anything was written since, for windows that stand on the same job. */
export const feelPulse: Handler<'book.pulse'> = ({ book }) => good({ pulse: book.undo.pulse() })
