import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { checkPlan } from '../../shared/cutting/buyingPlan/checkPlan.ts'
import { buyingPlan } from '../../shared/cutting/buyingPlan/plan.ts'
import type { BuyRequest } from '../../shared/cutting/buyingPlan/request.ts'

const fixture = (name: string): string =>
  readFileSync(new URL(`../fixtures/cutting/${name}`, import.meta.url), 'utf8')

/** Proven optima by instance name; the library's own "best known" is one too many for four of them. */
const optima = new Map(
  fixture('optima-single.tsv')
    .trim()
    .split('\n')
    .map((row) => row.split('\t') as [string, string, string])
    .filter(([, lower, upper]) => lower === upper)
    .map(([name, lower]) => [name, Number(lower)]),
)

type Instance = { name: string; request: BuyRequest; optimum: number }

/** Reads one of the library's files: how many, then each one's name, capacity, number of items and best known, and its items. */
function instancesOf(file: string): Instance[] {
  const words = fixture(file).trim().split(/\s+/)
  const instances: Instance[] = []
  for (let at = 1; at < words.length;) {
    const [name = '', capacity = '', items = ''] = words.slice(at, at + 3)
    const sizes = words.slice(at + 4, at + 4 + Number(items)).map(Number)
    at += 4 + Number(items)
    const request: BuyRequest = {
      version: 1,
      kerf: 0,
      endTrim: 0,
      leastOffcut: 1,
      parts: sizes.map((length) => ({ section: 'board', length, quantity: 1 })),
      stock: [{ section: 'board', length: Number(capacity), pence: 1 }],
    }
    instances.push({ name, request, optimum: optima.get(`Falkenauer_${name}`) ?? NaN })
  }
  return instances
}

const all = ['binpack1.txt', 'binpack2.txt', 'binpack3.txt', 'binpack4.txt'].flatMap(instancesOf)

describe('OR-Library bin packing (J. E. Beasley), u120 to u1000', () => {
  it('is there whole: eighty, each with its proven optimum', () => {
    expect(all).toHaveLength(80)
    expect(all.filter(({ optimum }) => Number.isInteger(optimum))).toHaveLength(80)
    expect(all.filter(({ request }) => request.parts.length === 1000)).toHaveLength(20)
  })

  it.each(all)('$name takes $optimum lengths, proven', ({ request, optimum }) => {
    const plan = buyingPlan(request)
    if (!plan.ok) throw new Error(JSON.stringify(plan.problems))
    expect([plan.value.cost, plan.value.bound, plan.value.status]).toEqual([optimum, optimum, 'proven'])
    expect(checkPlan(request, plan.value)).toEqual({ faults: [], bound: optimum })
  })
})
