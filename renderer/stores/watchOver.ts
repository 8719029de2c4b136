import { onWriting } from './pulse.ts'

/** What is done at the turns of a window's life: look for others' edits, send one's own, send them for the last time. */
export type Turns = { look: () => Promise<void>; send: () => Promise<void>; sendAtEnd: () => void }

/** Looks whenever the book was written in, and on coming back to the window; sends on leaving it. Answers how to stop. */
export function watchOver({ look, send, sendAtEnd }: Turns): () => void {
  const sends = () => void send()
  const stopLooking = onWriting(() => void look())
  window.addEventListener('blur', sends)
  window.addEventListener('pagehide', sendAtEnd)
  document.addEventListener('visibilitychange', sends)
  return () => {
    stopLooking()
    window.removeEventListener('blur', sends)
    window.removeEventListener('pagehide', sendAtEnd)
    document.removeEventListener('visibilitychange', sends)
  }
}
