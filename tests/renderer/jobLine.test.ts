import { mount } from '@vue/test-utils'
import { createPinia } from 'pinia'
import { describe, expect, it } from 'vitest'
import JobLine from '../../renderer/jobs/JobLine.vue'
import type { JobRow } from '../../shared/job/job.ts'

const row = (some: Partial<JobRow>): JobRow => ({
  id: 7,
  number: '2026-007',
  customerId: 3,
  customer: 'Isolde Hartwhistle',
  town: 'Lower Rebate',
  title: 'Side gate',
  stage: 'quoted',
  due: null,
  unit: 'mm',
  width: 985,
  height: 1830,
  construction: 'ledged-braced',
  papers: 1,
  accepted: false,
  updatedAt: '2026-03-02T09:00:00.000Z',
  sample: false,
  ...some,
})

const stageOf = (some: Partial<JobRow>): string =>
  mount(JobLine, {
    props: { row: row(some), today: '2026-03-02', words: [] },
    global: { plugins: [createPinia()] },
  })
    .get('.stage')
    .text()

describe('a line of the job book', () => {
  it('says that a quotation was accepted until the stage itself says so', () => {
    expect(stageOf({})).not.toContain('accepted')
    expect(stageOf({ accepted: true })).toContain('accepted')
    expect(stageOf({ accepted: true, stage: 'ordered' })).not.toContain('accepted')
  })
})
