import { ref } from 'vue'
import type { Problem, Result } from '../../shared/problem.ts'
import { useGateStore } from '../stores/gate.ts'
import { useJobStore } from '../stores/job.ts'

/** Asking the book for a paper of the job on the board: what stands in the way, and whether one is being made. */
export function useAsking() {
  const jobs = useJobStore()
  const gate = useGateStore()
  const problems = ref<Problem[]>([])
  const busy = ref(false)

  /** What stands in the way before the book is even asked: a stop, or an entry still to be settled. */
  const inTheWay = (): Problem[] =>
    gate.unread.length > 0 || gate.standing === 'stopped'
      ? gate.stops.map(({ id, field, message, remedy }) => ({
          code: id,
          field,
          message: `${message} ${remedy}`,
        }))
      : []

  async function ready(): Promise<boolean> {
    problems.value = inTheWay()
    if (problems.value.length > 0) return false
    await jobs.send()
    if (jobs.pending.length === 0) return true
    problems.value = [
      {
        code: 'not-kept',
        field: '',
        message: 'What was entered last isn’t kept yet. Try again in a moment.',
      },
    ]
    return false
  }

  /** Asks once everything entered is kept; undefined where nothing could be asked, or the answer is no, which problems then tell. */
  async function ask<T>(work: (jobId: number) => Promise<Result<T>>): Promise<T | undefined> {
    if (!jobs.job || busy.value) return undefined
    busy.value = true
    const reply = (await ready()) ? await work(jobs.job.id) : undefined
    if (reply) problems.value = reply.ok ? [] : reply.problems
    busy.value = false
    return reply?.ok ? reply.value : undefined
  }

  return { problems, busy, ask }
}
