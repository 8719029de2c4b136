import { mkdirSync, readdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { checkPlan } from '../../shared/cutting/buyingPlan/checkPlan.ts'
import { buyingPlan } from '../../shared/cutting/buyingPlan/plan.ts'
import type { BuyingPlan } from '../../shared/cutting/buyingPlan/planModel.ts'
import type { BuyRequest } from '../../shared/cutting/buyingPlan/request.ts'
import { hardRequest } from '../ordering/hardRequest.ts'
import { inFolder, runCommand } from './runCommand.ts'

const request: BuyRequest = {
  version: 1,
  kerf: 3,
  endTrim: 20,
  leastOffcut: 450,
  parts: [
    { section: 'board', length: 1830, quantity: 9, mark: 'gate 1' },
    { section: 'board', length: 905.5, quantity: 4 },
  ],
  stock: [
    { section: 'board', length: 3600, pence: 910, available: 3 },
    { section: 'board', length: 4200, pence: 1130 },
  ],
  rack: [{ section: 'board', length: 1900 }],
}

/** Runs `buy` on a file that holds the text. */
const buy = (text: string) =>
  inFolder(async (folder) => {
    const path = join(folder, 'request.json')
    writeFileSync(path, text)
    const ended = await runCommand('buy', [path])
    expect(readdirSync(folder)).toEqual(['request.json'])
    return ended
  })

describe('buy', () => {
  it('prints a proven plan, the same bytes each time, and writes nothing', async () => {
    const { code, out, errors } = await buy(JSON.stringify(request))
    expect([code, errors]).toEqual([0, []])
    const plan = JSON.parse(out) as BuyingPlan
    expect(plan.status).toBe('proven')
    expect(checkPlan(request, plan)).toEqual({ faults: [], bound: plan.cost })
    const again = buyingPlan(request)
    const { gap, said, ...printed } = JSON.parse(out) as BuyingPlan & { gap: number; said: string }
    expect([gap, said]).toEqual([0, 'no cheaper way there is'])
    expect(again.ok && JSON.stringify(again.value)).toBe(JSON.stringify(printed))
    expect((await buy(`\uFEFF${JSON.stringify(request)}`)).out).toBe(out)
  })

  it('keeps to a time limit, and the plan it has by then passes the check', async () => {
    const { code, out } = await buy(JSON.stringify({ ...request, timeLimitMs: 1 }))
    const plan = JSON.parse(out) as BuyingPlan
    expect(code).toBe(0)
    expect(plan.bound).toBeLessThanOrEqual(plan.cost)
    expect(checkPlan(request, plan).faults).toEqual([])
  })

  it('says in money by how much a plan that was stopped may be dearer', async () => {
    const hard = { ...hardRequest(24, 7), timeLimitMs: 400 }
    const { code, out, errors } = await buy(JSON.stringify(hard))
    const plan = JSON.parse(out) as BuyingPlan & { gap: number; said: string }
    expect([code, errors, plan.status]).toEqual([0, [], 'best-found'])
    expect(plan.gap).toBe(plan.cost - plan.bound)
    const sum = plan.gap < 100 ? `${plan.gap}p` : `£${(plan.gap / 100).toFixed(2)}`
    expect(plan.said).toBe(`at most ${sum} dearer than the best there is`)
    expect(checkPlan(hard, plan).faults).toEqual([])
  })

  const broken: [what: string, text: string, lines: RegExp[]][] = [
    ['no text', '', [/^input: the file is empty, a buying request as JSON is accepted$/]],
    ['no JSON', '{ "version": 1, ', [/^input: not JSON/]],
    ['a list', '[]', [/^input: got a list of 0, accepted/]],
    [
      'two wrong fields',
      JSON.stringify({ ...request, kerf: 3.25, endTrim: -1 }),
      [/^kerf: got 3.25/, /^endTrim: got -1/],
    ],
    [
      'a part that is too long',
      JSON.stringify({ ...request, parts: [{ section: 'board', length: 4181, quantity: 1, mark: 'post' }] }),
      [
        /^parts\[0\]\.length: a part of 4181 \('post'\) .*the longest usable is 4180 .*20 lost to end trim.*, 1 too long$/,
      ],
    ],
    [
      'too little to be had',
      JSON.stringify({ ...request, stock: request.stock.slice(0, 1), rack: [] }),
      [
        /^stock: what is to be had of 'board' can’t hold every part; uncut stay .*; the cheapest way out is 6 more of 3600 \(£54\.60\)$/,
      ],
    ],
  ]

  it.each(broken)('with %s says so, a line a problem, and ends with 2', async (_what, text, expected) => {
    const { code, out, errors } = await buy(text)
    expect([code, out, errors.length]).toEqual([2, '', expected.length])
    expected.forEach((line, index) => expect(errors[index]).toMatch(line))
  })

  it('takes one file that is there', async () => {
    await inFolder(async (folder) => {
      mkdirSync(join(folder, 'sub'))
      for (const args of [
        [],
        ['a.json', 'b.json'],
        ['--help'],
        [join(folder, 'sub')],
        [join(folder, 'absent.json')],
      ]) {
        const { code, out, errors } = await runCommand('buy', args)
        expect([code, out, errors.length]).toEqual([2, '', 1])
        expect(errors[0]).toMatch(/request file is accepted/)
      }
    })
  })
})
