import * as v from 'valibot'
import { describe, expect, it } from 'vitest'
import { day } from '../../shared/pricing/shapes.ts'

describe('a day in a request', () => {
  it.each(['2026-05-31', '2028-02-29', '2000-02-29', '2026-12-01'])('may be %s', (iso) => {
    expect(v.safeParse(day, iso).success).toBe(true)
  })

  it.each(['2026-02-31', '2026-02-29', '1900-02-29', '2026-04-31', '2026-13-01', '2026-00-10', '31.5.2026'])(
    'is refused as %s, naming what is accepted',
    (iso) => {
      const read = v.safeParse(day, iso)
      expect(read.success).toBe(false)
      expect(read.issues?.[0]?.message).toMatch(/as 2026-05-31$/)
    },
  )
})
