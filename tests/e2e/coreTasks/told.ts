import type { Page } from '@playwright/test'
import { expect } from 'vitest'
import type { Gives, RequestName, Takes } from '../../../shared/contract.ts'
import type { Job, JobRow } from '../../../shared/job/job.ts'
import { ask } from '../timberBook.ts'

/** What the book answers to a request, over the page's own carrier. */
export const told = async <N extends RequestName>(
  page: Page,
  name: N,
  payload: Takes<N>,
): Promise<Gives<N>> => (await ask(page, name, payload)) as Gives<N>

/** The jobs of a customer, the newest first. */
export async function jobsOf(page: Page, name: string): Promise<JobRow[]> {
  const { rows } = await told(page, 'jobs.list', { search: name, stage: null })
  return rows.filter(({ customer }) => customer === name).sort((a, b) => b.id - a.id)
}

/** The job that a story is about: a customer's first. */
export async function jobOf(page: Page, name: string): Promise<Job> {
  const first = (await jobsOf(page, name)).at(-1)
  expect(first, `the job of ${name}`).toBeDefined()
  return told(page, 'jobs.open', { id: first?.id ?? 0 })
}
