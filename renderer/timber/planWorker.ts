import { work, type PlanAsk } from './planWork.ts'

/** Plans orders beside the window, so that the window never waits. One ask; while it plans it hears nothing, so ending the worker is how it is broken off. */
self.addEventListener('message', ({ data }: MessageEvent<PlanAsk>) =>
  work(data, (told) => self.postMessage(told)),
)
