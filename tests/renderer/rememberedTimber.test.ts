import { describe, expect, it } from 'vitest'
import { rememberedTimber } from '../../renderer/stores/rememberedTimber.ts'
import { firstFit, usualCutting, type TimberToBuy } from '../../shared/pricing/buyTimber.ts'
import { pence } from '../../shared/pricing/pence.ts'

function counting() {
  const asked: TimberToBuy[] = []
  const buy = rememberedTimber((ask) => {
    asked.push(ask)
    return firstFit(ask)
  })
  return { asked, buy }
}

const stock = [{ size: 3000, pence: pence(900) }]
const ask = (length: number): TimberToBuy => ({
  pieces: [
    { length, quantity: 2 },
    { length: 700, quantity: 1 },
  ],
  stock,
  cutting: usualCutting,
})

describe('timber that was worked out before', () => {
  it('is told again without being worked out, whatever the order of its pieces and their names', () => {
    const { asked, buy } = counting()
    const first = buy(ask(1200))
    const same = {
      ...ask(1200),
      pieces: [
        { length: 700, quantity: 1 },
        { length: 1200, quantity: 1 },
        { length: 1200, quantity: 1 },
      ],
    }
    expect(buy(same)).toBe(first)
    expect(asked).toHaveLength(1)
  })

  it('is worked out anew for other pieces, another price, another saw', () => {
    const { asked, buy } = counting()
    buy(ask(1200))
    buy(ask(1201))
    buy({ ...ask(1200), stock: [{ size: 3000, pence: pence(901) }] })
    buy({ ...ask(1200), cutting: { kerf: 3, endTrim: 20 } })
    buy({ ...ask(1200), cutting: { kerf: 4, endTrim: 19 } })
    expect(asked).toHaveLength(5)
  })

  it('that can’t be bought is remembered as well', () => {
    const { asked, buy } = counting()
    expect([buy(ask(2990)), buy(ask(2990))]).toEqual([null, null])
    expect(asked).toHaveLength(1)
  })

  it('is forgotten, the oldest first, past two hundred', () => {
    const { asked, buy } = counting()
    for (let length = 500; length < 701; length += 1) buy(ask(length))
    expect(asked).toHaveLength(201)
    buy(ask(501))
    expect(asked).toHaveLength(201)
    buy(ask(500))
    expect(asked).toHaveLength(202)
  })
})
