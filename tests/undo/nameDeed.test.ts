import { describe, expect, it } from 'vitest'
import { nameDeed } from '../../shared/undo/nameDeed.ts'
import type { Step } from '../../shared/undo/step.ts'

const changed = (table: string, cell: string, was: string | null, is: string): Step => ({
  ...{ table, key: { id: 7 }, of: '', jobId: 7, unit: 'mm' },
  ...{ was: { [cell]: was }, is: { [cell]: is } },
})

describe('what a deed is called', () => {
  it('writes a promised day as a paper does', () => {
    expect(nameDeed([changed('jobs', 'due', null, '2026-11-26')], '2026-031')).toBe(
      'Promised 26 November 2026',
    )
  })

  it('leaves the hyphens of a name that the person wrote, and none in what was chosen of a list', () => {
    const name = changed('customers', 'name', 'Ned Gauge', 'Barnaby Dovetail-Green')
    expect(nameDeed([name], '')).toBe('Customer’s name Ned Gauge → Barnaby Dovetail-Green')
    const kind = changed('jobs', 'entry.spec.construction', 'ledged', 'ledged-braced')
    expect(nameDeed([kind], '')).toBe('Construction ledged → ledged braced')
  })
})
