/** How often another window's edits are looked for while this one is in sight, ms. */
const lookEvery = 2000

/** What is done at the turns of a window's life: look for others' edits, send one's own, send them for the last time. */
export type Turns = { look: () => Promise<void>; send: () => Promise<void>; sendAtEnd: () => void }

/** Looks now and then, and on coming back to the window; sends on leaving it. Answers how to stop. */
export function watchOver({ look, send, sendAtEnd }: Turns): () => void {
  const looks = () => void look()
  const sends = () => void send()
  const timer = setInterval(looks, lookEvery)
  window.addEventListener('focus', looks)
  window.addEventListener('blur', sends)
  window.addEventListener('pagehide', sendAtEnd)
  document.addEventListener('visibilitychange', sends)
  return () => {
    clearInterval(timer)
    window.removeEventListener('focus', looks)
    window.removeEventListener('blur', sends)
    window.removeEventListener('pagehide', sendAtEnd)
    document.removeEventListener('visibilitychange', sends)
  }
}
