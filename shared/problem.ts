/**
 * Something wrong with what came in, said so that the person can mend it.
 * field is a dotted path ('boards.section.width', 'heights[1]'; '' for the whole input); message says what is wrong,
 * what came and what is accepted. code is for programs and tests, never shown. fault, where the program or the disk failed,
 * is the mark under which the log tells more; it is shown only beside "Copy details".
 */
export type Problem = { code: string; field: string; message: string; fault?: string }

export type Result<T> = { ok: true; value: T } | { ok: false; problems: Problem[] }

export const good = <T>(value: T): Result<T> => ({ ok: true, value })

export const bad = <T = never>(...problems: Problem[]): Result<T> => ({ ok: false, problems })

/** One line for standard error: `field.path: what is wrong, what is accepted`. */
export const problemLine = (problem: Problem): string =>
  `${problem.field === '' ? 'input' : problem.field}: ${problem.message}`.replace(/\s+/g, ' ')
