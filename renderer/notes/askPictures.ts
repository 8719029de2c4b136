import type { Result } from '../../shared/problem.ts'
import type { Scaled } from './pictureWork.ts'

/** Scales one file down in a worker of its own, which gives back its memory when it is done: a large picture needs some hundred MB. */
export function scaleDown(file: File): Promise<Result<Scaled>> {
  const worker = new Worker(new URL('./pictureWorker.ts', import.meta.url), { type: 'module' })
  return new Promise((give) => {
    const end = (told: Result<Scaled>) => {
      worker.terminate()
      give(told)
    }
    worker.addEventListener('message', ({ data }: MessageEvent<Result<Scaled>>) => end(data))
    worker.addEventListener('error', () =>
      end({
        ok: false,
        problems: [{ code: 'refused', field: '', message: 'It couldn’t be read. Choose it again.' }],
      }),
    )
    worker.postMessage(file)
  })
}
