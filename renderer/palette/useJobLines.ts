import { onBeforeUnmount, ref, watch, type Ref } from 'vue'
import type { JobRow, Paper } from '../../shared/job/job.ts'
import { request } from '../api.ts'
import type { Command } from './command.ts'
import { deedAndJob, jobCommand } from './deedsFor.ts'

/** A job found by words, and what the same words ask to have done with it; paper: the issued card that they mean. */
export type DeedLine = { job: JobRow; command: Command; paper?: Paper }

/** Jobs shown under the commands, jobs of which something is to be done, and cards of each. */
const mostJobs = 6
const mostDone = 3
const mostCards = 3
/** Keys come quicker than the eye reads. */
const restMs = 90

async function jobsBy(search: string, most: number): Promise<JobRow[]> {
  const reply = await request('jobs.list', { search, stage: null })
  return reply.ok ? reply.value.rows.slice(0, most) : []
}

/** The issued cards of a job, the newest first; the one of that number where there is one. */
async function cardsOf(job: JobRow, revision: number | undefined): Promise<Paper[]> {
  const reply = await request('papers.list', { jobId: job.id })
  if (!reply.ok) return []
  return reply.value
    .filter((paper) => paper.kind === 'job-card' && (revision ?? paper.revision) === paper.revision)
    .sort((a, b) => b.revision - a.revision)
    .slice(0, mostCards)
}

const opening = (command: Command, { id, jobId }: Paper): Command => ({
  ...command,
  go: { name: 'job', id: jobId, part: 'papers', paper: id },
})

async function deedsBy(words: string): Promise<DeedLine[]> {
  const { deeds, rest, revision } = deedAndJob(words)
  const jobs = deeds.length > 0 ? await jobsBy(rest, mostDone) : []
  const lines = jobs.map(async (job) => {
    const cards = deeds.includes('print') ? await cardsOf(job, revision) : []
    return deeds.flatMap((deed): DeedLine[] => {
      const command = jobCommand(deed, job.id)
      if (!command) return []
      if (deed !== 'print') return [{ job, command }]
      return cards.map((paper) => ({ job, command: opening(command, paper), paper }))
    })
  })
  return (await Promise.all(lines)).flat()
}

/** The jobs that the typed words find, and what the words ask to have done; an answer that a later key has overtaken is let go. looking: one is to come. */
export function useJobLines(typed: Ref<string>) {
  const found = ref<JobRow[]>([])
  const deeds = ref<DeedLine[]>([])
  const looking = ref(false)
  let timer: ReturnType<typeof setTimeout> | undefined
  async function look(words: string): Promise<void> {
    const [jobs, lines] = await Promise.all([jobsBy(words, mostJobs), deedsBy(words)])
    if (typed.value.trim() !== words) return
    found.value = jobs
    deeds.value = lines
    looking.value = false
  }
  watch(typed, (now) => {
    clearTimeout(timer)
    const words = now.trim()
    looking.value = words !== ''
    if (words === '') found.value = deeds.value = []
    else timer = setTimeout(() => void look(words), restMs)
  })
  onBeforeUnmount(() => clearTimeout(timer))
  return { found, deeds, looking }
}
