import { fileURLToPath } from 'node:url'
import { Worker } from 'node:worker_threads'
import { BookProblem, type BookProblemCode } from '../bookProblem.ts'
import { doWork, type Work, type WorkCameOut, type WorkGives } from './work.ts'
import { standIn, standMemory } from './workStand.ts'

/** The thread's file where the program runs from its sources; a bundle names its own. */
const ownFile = (): string => fileURLToPath(new URL('./worker.ts', import.meta.url))

/** Runs work in a thread; undefined when no thread could be had, which is no reason not to do it. */
function inThread(work: Work, file: string, memory: SharedArrayBuffer): Promise<WorkCameOut | undefined> {
  return new Promise((done) => {
    const worker = new Worker(file, { workerData: { work, memory } })
    worker.once('message', (cameOut: WorkCameOut) => done(cameOut))
    worker.once('error', () => done(undefined))
    worker.once('exit', () => done(undefined))
  })
}

/**
 * Does a piece of work beside the window's own, in a thread; here and now where no thread can be had. Throws what the work throws: a BookProblem with its
 * own code and sentence, anything else with its stack as the cause. memory: where the work tells how far it is, and heeds being stopped.
 */
export async function beside<D extends Work['do']>(
  work: Extract<Work, { do: D }>,
  file: string = ownFile(),
  memory = standMemory(),
): Promise<WorkGives[D]> {
  const cameOut = (await inThread(work, file, memory)) ?? {
    ok: true,
    value: await doWork(work, standIn(memory)),
  }
  if (cameOut.ok) return cameOut.value as WorkGives[D]
  if (cameOut.code === null) throw new Error(cameOut.message, { cause: cameOut.said })
  throw new BookProblem(cameOut.code as BookProblemCode, cameOut.message, cameOut.said)
}
