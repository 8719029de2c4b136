/** How often a page tells the host that it is open, ms: the host closes the book after half an hour without a word. */
const every = 4 * 60_000

/**
 * Where the screens are served to a browser: tells the host now and then that this page lies open. The program's own
 * window needs none of it. Gives how to stop.
 */
export function sayStillOpen(): () => void {
  if (window.bracework) return () => {}
  const timer = setInterval(() => {
    const headers = { 'content-type': 'application/json' }
    fetch('/still-open', { method: 'POST', headers, body: '{}' }).catch(() => {
      // A host that is gone is told by whatever asks it next.
    })
  }, every)
  return () => clearInterval(timer)
}
