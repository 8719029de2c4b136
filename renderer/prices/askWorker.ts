import type { ListAsk, ListTold } from './listWork.ts'

/** An ask of the reader of lists that can be broken off: at once, whatever it is doing. */
export type ListAsking = { answer: Promise<ListTold | undefined>; breakOff: () => void }

/** Asks a reader of its own. The answer is undefined where it was broken off. progress hears how far it is. */
export function askWorker(
  ask: ListAsk,
  progress: (told: Extract<ListTold, { told: 'progress' }>) => void,
): ListAsking {
  const worker = new Worker(new URL('./listWorker.ts', import.meta.url), { type: 'module' })
  let give: (told: ListTold | undefined) => void = () => {}
  const answer = new Promise<ListTold | undefined>((resolve) => (give = resolve))
  const end = (told: ListTold | undefined) => {
    worker.terminate()
    give(told)
  }
  worker.addEventListener('message', ({ data }: MessageEvent<ListTold>) =>
    data.told === 'progress' ? progress(data) : end(data),
  )
  worker.addEventListener('error', () =>
    end({ told: 'refused', sentence: 'The list couldn’t be read. Choose it again.' }),
  )
  worker.postMessage(ask)
  return { answer, breakOff: () => end(undefined) }
}
