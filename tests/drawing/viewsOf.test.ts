import { describe, expect, it } from 'vitest'
import { extraDrawings } from '../../shared/drawing/extraDrawings.ts'
import { viewsOf } from '../../shared/drawing/viewsOf.ts'
import { design } from '../../shared/gate/design.ts'
import { wholeGates } from './wholeGates.ts'

describe('the further views of a gate', () => {
  it.each(wholeGates)('$name: are told as they would be drawn', ({ spec }) => {
    const outcome = design(spec)
    if (!outcome.made) throw new Error('this gate can be made')
    expect(viewsOf(spec, outcome.design)).toEqual(Object.keys(extraDrawings(spec, outcome.design, 'mm')))
  })
})
