import { describe, expect, it } from 'vitest'
import type { Operation } from '../../shared/pricing/needs.ts'
import { standardTimes } from '../../shared/pricing/standardTimes.ts'

describe('standard times', () => {
  it('are there for every operation, over nothing', () => {
    for (const operation of Object.keys(standardTimes) as Operation[])
      expect(standardTimes[operation]).toBeGreaterThan(0)
  })
})
