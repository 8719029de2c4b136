import { afterEach, describe, expect, it } from 'vitest'
import { bigFigures } from '../../renderer/bigFigures.ts'
import { useGateStore } from '../../renderer/stores/gate.ts'
import { useJobStore } from '../../renderer/stores/job.ts'
import { carrier, job } from './standIn.ts'

async function sized(width: string | number, height: number) {
  carrier(job())
  const jobs = useJobStore()
  await jobs.open(7)
  const read =
    typeof width === 'number' ? { value: width, typed: String(width) } : { value: null, typed: width }
  jobs.edit([{ path: 'spec.size.width', ...read }])
  jobs.edit([{ path: 'spec.size.height', value: height, typed: String(height) }])
  return useGateStore()
}

describe('the gate on the board', () => {
  afterEach(() => useJobStore().close())

  it('is drawn as soon as both sizes are there', async () => {
    const gate = await sized(985, 1830)
    expect(gate.standing).toBe('made')
    expect(gate.drawings?.back.title).toMatch(/Back/)
    expect(gate.made?.leaves[0]?.width).toBe(985)
  })

  it('waits for its sizes and says which words it could not use', async () => {
    const gate = await sized('about a yard', 1830)
    expect(gate.standing).toBe('to come')
    expect(gate.unread).toEqual([{ field: 'size.width', words: 'about a yard', asks: false }])
    expect(gate.stops[0]?.message).toContain('about a yard')
  })

  it('holds a card back while words in any entry differ from what the gate was worked out with', async () => {
    const gate = await sized(985, 1830)
    useJobStore().edit([{ path: 'spec.boards.gap', value: 2, typed: '1,250' }])
    expect(gate.unread).toEqual([{ field: 'boards.gap', words: '1,250', asks: true }])
    expect(gate.stops[0]?.field).toBe('boards.gap')
  })

  it('keeps no drawing of a gate that can’t be made', async () => {
    const gate = await sized(60, 1830)
    expect(gate.standing).toBe('stopped')
    expect(gate.drawings).toBeNull()
    expect(gate.stops.length).toBeGreaterThan(0)
  })

  it('sets large how many boards, what to rip, the brace’s angle and its length, each with its worked figure', async () => {
    const gate = await sized(985, 1830)
    const design = gate.made
    if (!design) throw new Error('this gate can be made')
    const figures = bigFigures(design, 'mm')
    const boards = design.leaves[0]?.boards ?? []
    const brace = design.leaves[0]?.braces[0]
    expect(figures[0]).toMatchObject({ name: 'Boards', shown: String(boards.length) })
    expect(figures.find(({ name }) => name === 'Brace angle')?.shown).toBe(`${brace?.angle.toFixed(1)}°`)
    for (const { id } of figures) expect(design.figures[id]?.formula).toMatch(/\S/)
  })
})
