/** Hours or timber really used on a job, entered as the work goes. quantity: hours, metres, pence. group as in the estimate. */
export type WorkDone = {
  id: number
  jobId: number
  what: 'hours' | 'timber' | 'cost'
  group: 'timber' | 'fixings' | 'ironmongery' | 'finish' | 'making' | 'hanging' | 'extras'
  operation: string
  quantity: number
  note: string
  on: string
}

/**
 * Estimated against done, over jobs: where the standard times are off. Minutes and metres. count: how often the operation was done in all by
 * the estimates, from which the time of one follows; left out where a line was put by hand or is counted otherwise.
 */
export type EstimateRecord = {
  group: WorkDone['group']
  operation: string
  jobs: number
  estimated: number
  done: number
  count?: number
}
