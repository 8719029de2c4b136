import { computed, type ComputedRef } from 'vue'
import { sameValue } from '../shared/job/specPath.ts'

/** A computed list or record that stays the very same while it says the same, so that what shows it isn't painted anew at every key. */
export const unchanged = <T>(worked: () => T): ComputedRef<T> =>
  computed((before?: T) => {
    const now = worked()
    return before !== undefined && sameValue(before, now) ? before : now
  })
