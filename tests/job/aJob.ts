import { standardDraft } from '../../shared/gate/standardSpec.ts'
import type { Job } from '../../shared/job/job.ts'

/** A job as it may stand: a leaf 915 by 1800, its width typed as said. */
export const aJob = (given: Partial<Job> = {}): Job => ({
  id: 3,
  number: '2026-003',
  customer: {
    id: 8,
    name: 'Peg Sash',
    address: '1 Row',
    town: 'Nether Test',
    phone: '01632 960001',
    email: '',
  },
  title: 'Side gate',
  stage: 'designed',
  due: '2026-05-31',
  notes: '',
  unit: 'mm',
  entry: {
    spec: { ...standardDraft(), size: { from: 'leaf', width: 915, height: 1800 } },
    typed: { 'size.width': '915', 'size.height': '1.8 m' },
  },
  version: 5,
  createdAt: '2026-03-02T08:00:00.000Z',
  updatedAt: '2026-03-02T09:00:00.000Z',
  sample: false,
  ...given,
})
