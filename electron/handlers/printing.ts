import { bad, good, type Problem, type Result } from '../../shared/problem.ts'
import type { Context, Handler } from './context.ts'

/** The reader and gatherer of pages, loaded with the first paper that is printed. */
const pagesTool = () => import('../paint/gatherPages.ts')

const gone: Problem = {
  code: 'not-found',
  field: 'sha256',
  message: 'this paper has been put away meanwhile; show it again',
}

const onShelf = ({ shelf }: Context, sha256: string): Result<Uint8Array> => {
  const found = shelf.find(sha256)
  return found ? good(found.bytes) : bad(gone)
}

const noSuchPage = (page: number, pages: number): Problem => ({
  code: 'refused',
  field: 'pages',
  message: `there is no page ${page}; this paper has ${pages === 1 ? 'one page' : `pages 1 to ${pages}`}`,
})

/**
 * Some pages of a paper that was shown, as a paper of its own: the very pages, carried over and not drawn anew. All of them, once, is the paper
 * itself, byte for byte. It is shown before it is printed.
 */
export const partOfPaper: Handler<'papers.part'> = async (context, { sha256, pages, copies }) => {
  const found = onShelf(context, sha256)
  if (!found.ok) return found
  const { gatherPages, lookAtPaper } = await pagesTool()
  const whole = await lookAtPaper(found.value)
  const missing = pages.find((page) => page > whole.pages)
  if (missing !== undefined) return bad(noSuchPage(missing, whole.pages))
  const wanted = [...new Set(pages)].sort((a, b) => a - b)
  const all = wanted.length === whole.pages && copies === 1
  const part = all
    ? undefined
    : await gatherPages([{ bytes: found.value, pages: wanted }], { title: whole.title, copies })
  const shelved = context.shelf.put(part?.bytes ?? found.value)
  return good({ base64: Buffer.from(shelved.bytes).toString('base64'), sha256: shelved.sha256 })
}

const printerSaid = (said: string): Problem => ({
  code: 'refused',
  field: '',
  message: `the printer didn’t take it (${said || 'it gave no reason'}); see that it is on and has paper, then print again`,
})

/** Prints a paper that was shown, at actual size, by the system's own print window. Only in the program's window: a browser prints by itself. */
export const printPaper: Handler<'papers.print'> = async (context, { sha256, copies }) => {
  if (context.print === null)
    return bad({ code: 'refused', field: '', message: 'here the browser prints; use its own print window' })
  const found = onShelf(context, sha256)
  if (!found.ok) return found
  const { width, height } = await (await pagesTool()).lookAtPaper(found.value)
  const printed = await context.print({ sha256, copies, width, height })
  return printed.ended === 'failed' ? bad(printerSaid(printed.said)) : good({ ended: printed.ended })
}
