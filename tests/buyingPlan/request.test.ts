import { describe, expect, it } from 'vitest'
import { parseBuyRequest } from '../../shared/cutting/buyingPlan/request.ts'
import { problemLine } from '../../shared/problem.ts'

const sound = {
  version: 1,
  kerf: 3.2,
  endTrim: 20,
  leastOffcut: 450,
  timeLimitMs: 5000,
  parts: [{ section: '22 × 100', length: 1830.5, quantity: 7, mark: 'gate 1' }],
  stock: [{ section: '22 × 100', length: 3600, pence: 912, available: 4 }],
  rack: [{ section: '22 × 100', length: 1204, pence: 0 }],
}

const lines = (input: unknown): string[] => {
  const read = parseBuyRequest(input)
  return read.ok ? [] : read.problems.map(problemLine)
}

const withPart = (change: object) => ({ ...sound, parts: [{ ...sound.parts[0], ...change }] })
const withStock = (change: object) => ({ ...sound, stock: [{ ...sound.stock[0], ...change }] })

const refused: [what: string, input: unknown, line: RegExp][] = [
  ['no object', 7, /^input: got 7, accepted is an object/],
  ['another version', { ...sound, version: 2 }, /^version: got 2, accepted is the number 1$/],
  [
    'no kerf',
    { ...sound, kerf: undefined },
    /^kerf: missing, accepted is a length in mm from 0 to 20, in whole tenths$/,
  ],
  ['a kerf in hundredths', { ...sound, kerf: 3.25 }, /^kerf: got 3.25, accepted is .* in whole tenths$/],
  ['a kerf below nothing', { ...sound, kerf: -0.1 }, /^kerf: got -0.1, accepted/],
  [
    'a trim as long as a length',
    { ...sound, endTrim: 1000.1 },
    /^endTrim: got 1000.1, accepted is a length in mm from 0 to 1000/,
  ],
  ['an offcut as text', { ...sound, leastOffcut: '450' }, /^leastOffcut: got '450', accepted/],
  [
    'no time',
    { ...sound, timeLimitMs: 0 },
    /^timeLimitMs: got 0, accepted is a whole number from 1 to 3600000$/,
  ],
  ['an unknown key', { ...sound, sawKerf: 3 }, /^sawKerf: unknown key, accepted here are version, kerf/],
  ['parts not in a list', { ...sound, parts: {} }, /^parts: got an object, accepted is a list of parts/],
  [
    'a part in hundredths',
    withPart({ length: 1830.55 }),
    /^parts\[0\]\.length: got 1830.55, accepted is a length in mm over 0 and up to 20000, in whole tenths$/,
  ],
  ['a part of nothing', withPart({ length: 0 }), /^parts\[0\]\.length: got 0, accepted/],
  ['a part past all timber', withPart({ length: 20000.1 }), /^parts\[0\]\.length: got 20000.1, accepted/],
  ['a part that is no number', withPart({ length: NaN }), /^parts\[0\]\.length: got NaN, accepted/],
  [
    'half a part',
    withPart({ quantity: 1.5 }),
    /^parts\[0\]\.quantity: got 1.5, accepted is a whole number from 1 to 20000$/,
  ],
  ['no part', withPart({ quantity: 0 }), /^parts\[0\]\.quantity: got 0, accepted/],
  [
    'an empty mark',
    withPart({ mark: '' }),
    /^parts\[0\]\.mark: got '', accepted is a text of 1 to 200 characters$/,
  ],
  ['no section', withPart({ section: '' }), /^parts\[0\]\.section: got '', accepted/],
  [
    'half a penny',
    withStock({ pence: 9.5 }),
    /^stock\[0\]\.pence: got 9.5, accepted is whole pence from 0 to 1000000$/,
  ],
  ['a price below nothing', withStock({ pence: -1 }), /^stock\[0\]\.pence: got -1, accepted/],
  [
    'lengths to be had below nothing',
    withStock({ available: -1 }),
    /^stock\[0\]\.available: got -1, accepted/,
  ],
  [
    'a rack piece in hundredths',
    { ...sound, rack: [{ section: 'a', length: 9.99 }] },
    /^rack\[0\]\.length: got 9.99, accepted/,
  ],
  [
    'a rack piece with a count',
    { ...sound, rack: [{ section: 'a', length: 9, available: 2 }] },
    /^rack\[0\]\.available: unknown key/,
  ],
  [
    'more pieces than are counted',
    { ...sound, parts: [...sound.parts, { section: 'a', length: 5, quantity: 19_994 }] },
    /^parts: 20001 pieces in all, up to 20000 are accepted$/,
  ],
  [
    'more money than is exact',
    { ...withPart({ quantity: 20_000 }), stock: [{ section: 'a', length: 5, pence: 25_001 }] },
    /^stock: 20000 pieces from lengths of 25001 pence each can come to 500020000 pence, up to 500000000 is accepted$/,
  ],
]

describe('a buying request', () => {
  it('is read as it stands, with rack, time limit and marks or without', () => {
    expect(parseBuyRequest(sound)).toEqual({ ok: true, value: sound })
    const { rack: _rack, timeLimitMs: _limit, ...least } = sound
    expect(parseBuyRequest(least)).toEqual({ ok: true, value: least })
  })

  it.each(refused)('with %s is refused in one line', (_what, input, line) => {
    expect(lines(input)).toHaveLength(1)
    expect(lines(input)[0]).toMatch(line)
  })

  it('has all its problems told at once', () => {
    expect(lines({ ...withPart({ quantity: 0, length: -4 }), kerf: 99 })).toHaveLength(3)
  })
})
