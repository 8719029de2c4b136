import { bad, good, type Result } from '../../shared/problem.ts'
import { inOwnWindow, request } from '../api.ts'
import { markOf } from '../paperBytes.ts'

/** Hands bytes to the browser's own print window, by its own viewer, in a frame nobody sees. */
async function printInBrowser(
  bytes: Uint8Array<ArrayBuffer>,
  frame: HTMLIFrameElement,
): Promise<Result<null>> {
  const address = URL.createObjectURL(new Blob([bytes], { type: 'application/pdf' }))
  const before = frame.src
  const loaded = new Promise<void>((resolve) =>
    frame.addEventListener('load', () => resolve(), { once: true }),
  )
  frame.dataset['sha256'] = await markOf(bytes)
  frame.src = `${address}#toolbar=0&navpanes=0`
  await loaded
  if (before.startsWith('blob:')) URL.revokeObjectURL(before.split('#')[0] ?? before)
  const inside = frame.contentWindow
  if (!inside)
    return bad({
      code: 'refused',
      field: '',
      message: 'This browser can’t print it from here. Keep a copy and print that.',
    })
  inside.focus()
  inside.print()
  return good(null)
}

/** Prints the bytes shown: in the program's window by the system's print window, at actual size; elsewhere by the browser's own. */
export async function printShown(
  bytes: Uint8Array<ArrayBuffer>,
  { copies, frame }: { copies: number; frame: HTMLIFrameElement },
): Promise<Result<unknown>> {
  if (!inOwnWindow()) return printInBrowser(bytes, frame)
  return request('papers.print', { sha256: await markOf(bytes), copies })
}
