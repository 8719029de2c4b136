import type { PlanAsk, PlanTold } from './planWork.ts'

/** Asks a planner of its own, and hears what it tells. Gives what breaks it off: at once, whatever it is doing, and nothing more is heard. */
export function askPlan(ask: PlanAsk, hear: (told: PlanTold | { told: 'failed' }) => void): () => void {
  const worker = new Worker(new URL('./planWorker.ts', import.meta.url), { type: 'module' })
  let ended = false
  const end = () => {
    ended = true
    worker.terminate()
  }
  worker.addEventListener('message', ({ data }: MessageEvent<PlanTold>) => {
    if (ended) return
    if (data.told === 'done') end()
    hear(data)
  })
  worker.addEventListener('error', () => {
    if (ended) return
    end()
    hear({ told: 'failed' })
  })
  worker.postMessage(ask)
  return end
}
