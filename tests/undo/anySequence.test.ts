import { describe, expect, it } from 'vitest'
import { seeded } from '../faults/seeded.ts'
import { fillPrices } from '../fixtures/prices.ts'
import { again, back, deedBook, stateOf } from './deedBook.ts'
import { randomDeed } from './randomDeeds.ts'

const long = process.env['BRACEWORK_SOAK'] === '1'
const seeds = long ? Array.from({ length: 25 }, (_, place) => 6100 + place) : [6101]
const deeds = 120

describe('any sequence of deeds over jobs, prices, settings and the rack', () => {
  it.each(seeds)(
    `taken back one by one, through restarts, leads back step by step; done again, forward (seed %i, ${deeds} deeds)`,
    (seed) => {
      const at = deedBook()
      fillPrices(at.book)
      at.book.deeds.forget()
      const chance = seeded(seed).next
      const states = [stateOf(at.book)]
      for (let turn = 1; turn <= deeds; turn += 1) {
        randomDeed(at.book, chance, turn)
        states.push(stateOf(at.book))
      }
      const names = at.book.undo.list(null).back.map(({ name }) => name)
      expect(names).toHaveLength(deeds)
      for (let turn = deeds; turn > 0; turn -= 1) {
        if (turn % 20 === 0) at.reopen()
        expect(back(at), `${names[deeds - turn]}`).toMatchObject({ done: true })
        expect(stateOf(at.book), `${turn}: ${names[deeds - turn]}`).toEqual(states[turn - 1])
      }
      expect(at.book.undo.list(null).back).toEqual([])
      for (let turn = 1; turn <= deeds; turn += 1) {
        if (turn % 20 === 0) at.reopen()
        expect(again(at), `${names[deeds - turn]}`).toMatchObject({ done: true })
        expect(stateOf(at.book), `${turn}: ${names[deeds - turn]} again`).toEqual(states[turn])
      }
      expect(at.book.undo.list(null).back.map(({ name }) => name)).toEqual(names)
    },
  )
})
