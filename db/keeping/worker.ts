import { parentPort, workerData } from 'node:worker_threads'
import { BookProblem } from '../bookProblem.ts'
import { doWork, type Work, type WorkCameOut } from './work.ts'
import { standIn } from './workStand.ts'

/** What a thread is started with. memory: where it tells how far it is. */
type Started = { work: Work; memory: SharedArrayBuffer }

/** Runs in a thread of its own: does the one piece of work it was started with, answers, and ends. */
async function cameOut({ work, memory }: Started): Promise<WorkCameOut> {
  try {
    return { ok: true, value: await doWork(work, standIn(memory)) }
  } catch (error) {
    const said = error instanceof Error ? (error.stack ?? error.message) : String(error)
    const cause = error instanceof Error && error.cause ? `\ncaused by ${String(error.cause)}` : ''
    return {
      ok: false,
      code: error instanceof BookProblem ? error.code : null,
      message: error instanceof Error ? error.message : String(error),
      said: `${said}${cause}`,
    }
  }
}

void cameOut(workerData as Started).then((out) => parentPort?.postMessage(out))
