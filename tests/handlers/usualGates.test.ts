import { describe, expect, it } from 'vitest'
import { layOver } from '../../shared/gate/usualGate.ts'
import { standardDraft } from '../../shared/gate/standardSpec.ts'
import type { GateSpec } from '../../shared/gate/spec.ts'
import { wholeGates } from '../drawing/wholeGates.ts'
import { opened } from './opened.ts'

const gateNamed = (name: string): GateSpec => {
  const found = wholeGates.find((one) => one.name === name)
  if (!found) throw new Error(`no gate ${name}`)
  return found.spec
}
const [bowed, framedPair] = [gateNamed('09-bowed'), gateNamed('25-framed-pair-level-strip')]

describe('usual gates', () => {
  it('are kept by name, renamed, put away, and never two of one name', async () => {
    const { ask, refused } = opened()
    await ask('usual.add', { name: '  Paddock gate ', unit: 'mm', spec: bowed })
    await ask('usual.add', { name: 'Almshouse door', unit: 'in', spec: framedPair })
    expect((await ask('usual.list', {})).map(({ name, unit }) => [name, unit])).toEqual([
      ['Almshouse door', 'in'],
      ['Paddock gate', 'mm'],
    ])
    expect(await refused('usual.add', { name: 'paddock GATE', unit: 'mm', spec: bowed })).toEqual([
      'refused name',
    ])
    const [door, paddock] = await ask('usual.list', {})
    if (!door || !paddock) throw new Error('not kept')
    expect(paddock.spec).toEqual(bowed)
    expect(await refused('usual.rename', { id: door.id, name: 'Paddock gate' })).toEqual(['refused name'])
    await ask('usual.rename', { id: door.id, name: 'Almshouse pair' })
    expect((await ask('usual.remove', { id: paddock.id })).map(({ name }) => name)).toEqual([
      'Almshouse pair',
    ])
    expect(await refused('usual.remove', { id: paddock.id })).toEqual(['not-found id'])
  })

  it('are whole gates: one without its sizes is refused with the entry that is missing', async () => {
    const { refused } = opened()
    expect(await refused('usual.add', { name: 'Draft', unit: 'mm', spec: standardDraft() })).toEqual([
      ...['refused spec.size.width', 'refused spec.size.height'],
    ])
  })

  it('laid over a job, the way of making changes; sizes, hand, site and tools stay', async () => {
    const { ask } = opened()
    const job = await ask('jobs.create', {
      ...{ customerName: 'Peg Sash', town: '', phone: '', title: '', due: null },
    })
    const size = [
      { path: 'spec.size.width', value: 973 },
      { path: 'spec.size.height', value: 1777 },
      { path: 'spec.site', value: { slopeAlong: 0.031 } },
    ]
    const { job: sized } = await ask('jobs.change', { id: job.id, changes: size })
    const { job: laid } = await ask('jobs.change', {
      id: job.id,
      changes: layOver(sized.entry.spec, framedPair),
    })
    const { spec } = laid.entry
    expect(spec.construction).toBe('framed-ledged-braced')
    expect(spec.frame).toEqual(framedPair.frame)
    expect(spec.size).toEqual({ from: 'leaf', width: 973, height: 1777 })
    expect(spec.leaves).toBe(1)
    expect(spec.site).toEqual({ slopeAlong: 0.031 })
    expect(spec.workshop).toEqual(sized.entry.spec.workshop)
  })

  it('a new job from a pair is a pair with its meeting gap, its sizes still to come', async () => {
    const { ask } = opened()
    const job = await ask('jobs.create', {
      ...{ customerName: 'Ivo Mortice', town: '', phone: '', title: '', due: null },
    })
    const changes = layOver(job.entry.spec, framedPair, true)
    const { spec } = (await ask('jobs.change', { id: job.id, changes })).job.entry
    expect(spec.leaves).toBe(2)
    expect(spec.size).toEqual({
      ...{ from: 'leaf', width: null, height: null },
      meetingGap: framedPair.size.meetingGap,
    })
  })

  it('heights set by hand go back to the rule on a job of another height', () => {
    const own = { ...bowed, ledges: { ...bowed.ledges, heights: [211, 1409] } }
    const value = (height: number) => {
      const draft = { ...standardDraft(), size: { from: 'leaf' as const, width: 900, height } }
      return layOver(draft, { ...own, size: { from: 'leaf', width: 850, height: 1650 } }).find(
        ({ path }) => path === 'spec.ledges',
      )?.value
    }
    expect(value(1650)).toMatchObject({ heights: [211, 1409] })
    expect(value(1700)).toMatchObject({ heights: 'auto' })
  })
})
