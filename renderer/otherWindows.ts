/** The other windows of this browser; the program's own window has none beside it. */
const others = 'BroadcastChannel' in window ? new BroadcastChannel('bracework.book') : null

/** Tells the other windows that another book has taken this one's place, so that none goes on in the one that is gone. */
export const tellOtherWindows = (): void => void others?.postMessage('another book is open')

/** Begins again at the jobs, reading everything anew. */
export function beginAgain(): void {
  window.location.hash = '#/jobs'
  window.location.reload()
}

/** From now on this window begins again when another one tells it. */
export const followOtherWindows = (): void => others?.addEventListener('message', beginAgain)
