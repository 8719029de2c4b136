import { computed, ref } from 'vue'
import type { Paper } from '../../shared/job/job.ts'
import type { PaperFormat } from '../../shared/papers/page.ts'
import type { Problem, Result } from '../../shared/problem.ts'
import { useGateStore } from '../stores/gate.ts'
import { useJobStore } from '../stores/job.ts'
import { useOptionsStore } from '../stores/options.ts'
import { useQuotationsStore } from '../stores/quotations.ts'
import { useSettingsStore } from '../stores/settings.ts'

const notKept: Problem = {
  code: 'not-kept',
  field: '',
  message: 'What was entered last isn’t kept yet. Try again in a moment',
}

const noWords: Problem = {
  code: 'no-words',
  field: '',
  message:
    'A line of your own has no words yet. Say under Estimate what it is for, since the customer reads it',
}

/** Words still to be settled: a quotation of another size than was meant is worse than none. */
function unsettled(): Problem[] {
  const gate = useGateStore()
  if (gate.unread.length === 0) return []
  return gate.stops.map(({ id, field, message, remedy }) => ({
    code: id,
    field,
    message: `${message} ${remedy}`,
  }))
}

/** Sends all that was entered on its way; what is in the way of a quotation, if anything is. */
async function sendAll(): Promise<Problem[]> {
  const jobs = useJobStore()
  const options = useOptionsStore()
  const unclear = unsettled()
  if (unclear.length > 0) return unclear
  const wordless = options.options.some(({ entry }) => entry.extras.some(({ words }) => words.trim() === ''))
  if (wordless) return [noWords]
  await Promise.all([jobs.send(), options.send()])
  return jobs.pending.length > 0 || options.unsent.size > 0 ? [notKept] : []
}

/** Issuing a quotation, or looking at one first: everything entered goes to the book before either. */
export function useIssuing() {
  const jobs = useJobStore()
  const quotations = useQuotationsStore()
  const settings = useSettingsStore()
  const chosen = ref<PaperFormat | null>(null)
  const format = computed(() => chosen.value ?? settings.summary?.settings.paper ?? 'a4')
  const problems = ref<Problem[]>([])
  const busy = ref(false)

  async function doing<T>(ask: (jobId: number) => Promise<Result<T>>): Promise<T | undefined> {
    const id = jobs.job?.id
    if (id === undefined || busy.value) return undefined
    busy.value = true
    try {
      problems.value = await sendAll()
      if (problems.value.length > 0) return undefined
      const reply = await ask(id)
      problems.value = reply.ok ? [] : reply.problems
      await jobs.look()
      return reply.ok ? reply.value : undefined
    } finally {
      busy.value = false
    }
  }
  const issue = (): Promise<Paper | undefined> =>
    doing((jobId) => quotations.issue({ jobId, format: format.value, version: jobs.job?.version ?? 0 }))
  const draft = async (): Promise<string | undefined> =>
    (await doing((jobId) => quotations.draft(jobId, format.value)))?.base64

  return { chosen, format, problems, busy, issue, draft }
}
