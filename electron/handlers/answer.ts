import { BookProblem, bookProblemFrom } from '../../db/bookProblem.ts'
import { isRequestName, type Gives, type RequestName } from '../../shared/contract.ts'
import { bad, type Result } from '../../shared/problem.ts'
import type { Context, Handler } from './context.ts'
import { readRequest } from './longRequest.ts'
import { handlers } from './table.ts'

const said = (error: unknown): string =>
  error instanceof Error ? (error.stack ?? error.message) : String(error)

/** Where the book lies, for naming its drive; a book that isn't open lies nowhere. */
function pathOf(context: Context): string | undefined {
  try {
    return context.book.path
  } catch (problem) {
    if (problem instanceof BookProblem) return undefined
    throw problem
  }
}

/** What a throw becomes: the book's own problem in its words, or one plain sentence with the rest in the log. */
function problemOf(context: Context, name: string, thrown: unknown): Result<never> {
  const error = bookProblemFrom(thrown, pathOf(context))
  context.log(
    `${name}: ${said(error)}${error instanceof Error && error.cause ? `\ncaused by ${said(error.cause)}` : ''}`,
  )
  if (error instanceof BookProblem) return bad({ code: error.code, field: '', message: error.message })
  return bad({
    code: 'unexpected',
    field: '',
    message:
      'Something went wrong in the program and nothing was changed. What was kept before is safe; try again.',
  })
}

async function run<N extends RequestName>(
  context: Context,
  name: N,
  payload: unknown,
): Promise<Result<Gives<N>>> {
  const taken = await readRequest(name, payload)
  if (!taken.ok) return taken
  const handler: Handler<N> = handlers[name]
  return handler(context, taken.value)
}

/**
 * Answers one request, whoever carries it: reads the payload, runs the request's handler. Always gives a Result, never throws:
 * bad input as problems by field, trouble with the book under its own code, a fault of the program as 'unexpected' with its
 * stack in the log.
 */
export async function answer(context: Context, name: unknown, payload: unknown): Promise<Result<unknown>> {
  if (!isRequestName(name))
    return bad({ code: 'unknown-request', field: '', message: 'the program doesn’t know this request' })
  try {
    return await run(context, name, payload)
  } catch (thrown) {
    return problemOf(context, name, thrown)
  }
}
