import { createPinia, setActivePinia } from 'pinia'
import { beforeEach, describe, expect, it } from 'vitest'
import type { RackPiece } from '../../shared/ordering/orderModel.ts'
import { bad, good } from '../../shared/problem.ts'
import { useRackStore } from '../../renderer/stores/rack.ts'
import { countRows, foundPieces, metresOf } from '../../renderer/timber/rackRows.ts'
import { rackPiece } from '../ordering/aTask.ts'

const pieces: RackPiece[] = [
  rackPiece(1, { name: 'ex 25 × 125', length: 655, place: 'corner', note: 'knot near one end' }),
  rackPiece(2, { name: 'ex 25 × 125', length: 1862, place: 'long wall', jobNumber: '2026-003' }),
  rackPiece(3, { name: 'ex 19 × 125', length: 900.5, place: '' }),
  rackPiece(4, { name: 'ex 25 × 125', length: 1240, place: 'long wall', keptFor: '2026-T01' }),
]

type Counted = { seen: { id: number; place: string }[]; notFound: number[] }

function carrier() {
  const self: { counted: Counted[]; refuses: boolean } = { counted: [], refuses: false }
  const answers = {
    'rack.list': async () => good(pieces),
    'rack.count': async (given: Counted) => {
      if (self.refuses) return bad({ code: 'missing', field: 'seen[0]', message: 'no such piece' })
      self.counted.push(given)
      return good(pieces.filter(({ id }) => !given.notFound.includes(id)))
    },
  }
  Object.defineProperty(window, 'bracework', { value: answers, configurable: true })
  return self
}

describe('the rack', () => {
  beforeEach(() => setActivePinia(createPinia()))

  it('lies by section, the longest first, and is found by any of its words', async () => {
    carrier()
    const rack = useRackStore()
    await rack.read()
    expect(rack.sorted.map(({ id }) => id)).toEqual([3, 2, 4, 1])
    expect(rack.places).toEqual(['corner', 'long wall'])
    const ids = (words: string) => foundPieces(rack.sorted, words).map(({ id }) => id)
    expect(ids('125 WALL')).toEqual([2, 4])
    expect(ids('2026-003')).toEqual([2])
    expect(ids('knot')).toEqual([1])
    expect(ids('nothing such')).toEqual([])
    expect(metresOf(rack.sorted)).toBe('4.7 m')
  })

  it('is walked place by place in a stock-take, what has no place last', async () => {
    carrier()
    const rack = useRackStore()
    await rack.read()
    expect(
      countRows(rack.sorted, rack.places).map((row) => (row.kind === 'place' ? row.place : row.piece.id)),
    ).toEqual(['corner', 1, 'long wall', 2, 4, '', 3])
  })

  it('is written once when the stock-take is finished: seen, moved, not here, and the rest let be', async () => {
    const book = carrier()
    const rack = useRackStore()
    await rack.read()
    rack.note([2, 4], { place: 'long wall' })
    rack.note([4], { place: 'loft' })
    rack.note([1], 'not here')
    rack.note([3], 'not here')
    rack.note([3], null)
    expect(book.counted).toEqual([])
    expect(await rack.finish()).toBe(true)
    expect(book.counted).toEqual([
      {
        seen: [
          { id: 2, place: 'long wall' },
          { id: 4, place: 'loft' },
        ],
        notFound: [1],
      },
    ])
    expect(rack.seen.size).toBe(0)
    expect(rack.pieces?.map(({ id }) => id)).toEqual([2, 3, 4])
  })

  it('keeps what was marked where the book refuses it', async () => {
    const book = carrier()
    book.refuses = true
    const rack = useRackStore()
    await rack.read()
    rack.note([1], 'not here')
    expect(await rack.finish()).toBe(false)
    expect([rack.trouble, rack.seen.size]).toEqual(['No such piece.', 1])
  })
})
