import type { Page } from '@playwright/test'
import { expect } from 'vitest'
import { told } from '../taskDesk.ts'

/** The jobs of a customer, the newest first. */
export async function jobsOf(page: Page, name: string) {
  const { rows } = await told(page, 'jobs.list', { search: name, stage: null })
  return rows.filter(({ customer }) => customer === name).sort((a, b) => b.id - a.id)
}

/** The job that a story is about: a customer's first. */
export async function jobOf(page: Page, name: string) {
  const first = (await jobsOf(page, name)).at(-1)
  expect(first, `the job of ${name}`).toBeDefined()
  return told(page, 'jobs.open', { id: first?.id ?? 0 })
}

/** A card is old once the gate was drawn on and another issued. */
export async function overtakeCard(page: Page, name: string): Promise<void> {
  const { id } = await jobOf(page, name)
  const { job } = await told(page, 'jobs.change', {
    id,
    changes: [{ path: 'spec.boards.rip', value: 'both' }],
  })
  await told(page, 'papers.issue', { jobId: id, format: 'a4', version: job.version })
}
