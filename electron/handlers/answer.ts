import { BookProblem, bookProblemFrom, withPlace } from '../../db/bookProblem.ts'
import type { Book } from '../../db/open.ts'
import { isRequestName, type Gives, type RequestName } from '../../shared/contract.ts'
import { bad, type Result } from '../../shared/problem.ts'
import { faultWords } from '../discreet.ts'
import { faultMark } from '../faultMark.ts'
import type { Context, Handler } from './context.ts'
import { readRequest } from './longRequest.ts'
import { inTurn } from './stillBook.ts'
import { handlers } from './table.ts'

/** The open book; undefined where none is. */
function bookOf(context: Context): Book | undefined {
  try {
    return context.book
  } catch (problem) {
    if (problem instanceof BookProblem) return undefined
    throw problem
  }
}

/** What is said of a problem: of the book's own disk with its folder; what keeps it elsewhere names its own place. */
const told = (problem: BookProblem, name: string, path: string | undefined): string =>
  (path === undefined || name.startsWith('keeping.') ? problem : withPlace(problem, path)).message

/** What a throw becomes: the book's own problem in its words, or one plain sentence and a mark, with the rest in the log under that mark. */
function problemOf(context: Context, name: string, thrown: unknown): Result<never> {
  // For naming its drive; a book that isn't open lies nowhere.
  const path = bookOf(context)?.path
  const error = bookProblemFrom(thrown, path)
  // What is refused for a good reason is no fault: nothing for the log.
  if (error instanceof BookProblem && error.code === 'refused')
    return bad({ code: error.code, field: '', message: error.message })
  const fault = faultMark()
  context.log(`${fault} ${name}: ${faultWords(error)}`)
  if (error instanceof BookProblem)
    return bad({ code: error.code, field: '', message: told(error, name, path), fault })
  return bad({
    code: 'unexpected',
    field: '',
    fault,
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
  const book = bookOf(context)
  if (!book || asides.has(name)) return handler(context, taken.value)
  return inTurn(book, async () => handler(context, taken.value))
}

/** Asked while long work goes on, of that work alone. */
const asides = new Set<RequestName>(['book.inHand', 'book.stopWork'])

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
