import { describe, expect, it } from 'vitest'
import { crowdedHead } from '../../renderer/job/crowdedHead.ts'

describe('the head of a job', () => {
  it('has room for usual names everywhere', () => {
    expect(crowdedHead({ name: 'Isolde Hartwhistle', town: 'Lower Rebate' })).toEqual([])
  })

  it('gives up what the gate is, then the town, first on a laptop and then on any bench', () => {
    const town = 'Nether Shaving'
    expect(crowdedHead({ name: 'n'.repeat(31), town })).toEqual(['only-town'])
    expect(crowdedHead({ name: 'n'.repeat(40), town })).toEqual(['only-name'])
    expect(crowdedHead({ name: 'n'.repeat(62), town })).toEqual(['only-name', 'town-at-most'])
    expect(crowdedHead({ name: 'n'.repeat(90), town })).toEqual(['only-name', 'name-at-most'])
  })
})
