import { request, wasUnreachable } from '../api.ts'

/** How often it is asked whether anything was written in the book while this window is in sight, ms: a tenth of a millisecond's work for it. */
const feelEvery = 600
/** How often whoever listens is told when the book doesn't answer: they ask it themselves and say so, ms. */
const tellEvery = 2000

type Listening = {
  listeners: Set<() => void>
  last: string
  told: number
  timer: ReturnType<typeof setInterval> | undefined
}
const listening: Listening = { listeners: new Set(), last: '', told: 0, timer: undefined }

function tell(): void {
  listening.told = Date.now()
  for (const listener of listening.listeners) listener()
}

async function feel(): Promise<void> {
  if (document.visibilityState === 'hidden') return
  const reply = await request('book.pulse', {})
  if (reply.ok) {
    const before = listening.last
    listening.last = reply.value.pulse
    if (before !== reply.value.pulse) tell()
  } else if (wasUnreachable(reply) && Date.now() - listening.told >= tellEvery) tell()
}

/** Has something done whenever the book was written in, by this window or another, and on coming back to this one. Answers how to stop. */
export function onWriting(listener: () => void): () => void {
  const { listeners } = listening
  listeners.add(listener)
  window.addEventListener('focus', listener)
  listening.timer ??= setInterval(() => void feel(), feelEvery)
  return () => {
    listeners.delete(listener)
    window.removeEventListener('focus', listener)
    if (listeners.size > 0) return
    clearInterval(listening.timer)
    listening.timer = undefined
  }
}
