import type { NewJob } from '../../db/jobWriting.ts'
import { standardDraft } from '../../shared/gate/standardSpec.ts'

/** The job a power cut test writes, found again by its title. */
export const newJobFor = (title: string): NewJob => ({
  customer: { name: 'Peg Sash', address: '', town: 'Nether Test', phone: '', email: '' },
  title,
  due: null,
  unit: 'mm',
  spec: standardDraft(),
})
