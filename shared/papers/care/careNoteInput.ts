import type { AppliedFinish } from '../../describe/described.ts'
import type { Business } from '../../pricing/shapes.ts'
import type { JobCardInput } from '../jobCardInput.ts'

/**
 * All a care-and-handover note is made from: the gate as for its card, the workshop as it stands on a customer's paper, and the finish it put
 * on: null for left bare, left out where nothing is known of it.
 */
export type CareNoteInput = JobCardInput & { business: Business; finish?: AppliedFinish | null }
