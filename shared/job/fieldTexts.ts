import * as v from 'valibot'
import { day } from '../pricing/shapes.ts'
import { stages } from './job.ts'

/** What the words of a job's and the workshop's own fields may be. `long` is for notes; `jobs.change` checks its values field by field. */
export const fieldTexts = {
  short: v.pipe(v.string('a text'), v.maxLength(300, 'a text of up to 300 characters')),
  long: v.pipe(v.string('a text'), v.maxLength(20000, 'a text of up to 20000 characters')),
  day,
  unit: v.picklist(['mm', 'in'], 'mm or in'),
  stage: v.picklist(stages, `one of ${stages.join(', ')}`),
}
