import type { Chance } from './seeded.ts'

/** Lists in lists, or objects in objects, far deeper than anything that could be walked through. */
function nested(depth: number, wrap: (inner: unknown) => unknown): unknown {
  let inner: unknown = 'the bottom'
  for (let level = 0; level < depth; level += 1) inner = wrap(inner)
  return inner
}

function circular(): unknown {
  const round: Record<string, unknown> = { id: 1 }
  for (const key of ['self', 'boards', 'again']) round[key] = round
  return round
}

/** An object that came as text with a key of its own called `__proto__`. */
const ownPrototype = (): unknown => JSON.parse('{"__proto__":{"polluted":true},"id":1}')

const deepLists = nested(100_000, (inner) => [inner])
const deepObjects = nested(100_000, (inner) => ({ spec: inner }))
const hugeText = 'gate '.repeat(400_000)
const longList = Array.from({ length: 20_000 }, () => 1)

const numbers = [
  ...[
    NaN,
    Infinity,
    -Infinity,
    1e308,
    -1e308,
    5e-324,
    -0,
    0,
    -1,
    0.5,
    1.0000001,
    2 ** 31,
    2 ** 53,
    2 ** 53 + 2,
  ],
  ...[-(2 ** 63), 1e21, 41, 100_000],
]

const texts = [
  ...[
    '',
    ' ',
    '\0',
    'a\0b',
    '\ud800',
    '\udfff\ud800',
    '\u202egate',
    '1',
    '1e308',
    'NaN',
    'null',
    'true',
    '2026-02-30',
  ],
  ...[
    '9999-99-99',
    '0000-00-00',
    '+275760-09-13',
    '2026-03-02T08:00:00Z',
    "'; DROP TABLE jobs; --",
    '" OR 1=1',
    '%s%n',
  ],
  ...[
    '../../etc/passwd',
    '__proto__',
    'constructor',
    'spec',
    'spec.',
    'spec.__proto__.polluted',
    'spec.constructor.x',
  ],
  ...[
    'spec.boards.section.width',
    'spec.braces',
    'spec.version',
    'spec.size.widths.9999',
    'customer.id',
    'version',
  ],
  ...[
    'customer.__proto__',
    'entry.spec',
    'spec.fixings.lengths.0',
    'spec.ironmongery.0',
    'spec.timbers.oak.x',
    'stage',
  ],
  ...['<script>0</script>', 'x'.repeat(301), 'x'.repeat(20_001), hugeText],
]

/** Things that a window's message can carry and a request never does. */
const strangers: (() => unknown)[] = [
  ...[() => null, () => undefined, () => true, () => false, () => [], () => ({}), () => [[]], () => [null]],
  ...[() => deepLists, () => deepObjects, () => longList, circular, ownPrototype],
  ...[() => 10n ** 30n, () => new Date(NaN), () => new Map([['id', 1]]), () => new Set([1]), () => /x/g],
  ...[
    () => new Uint8Array(64),
    () => new Error('not yours'),
    () => Array(5000),
    () => Object.create(null) as unknown,
  ],
  ...[
    () => ({ id: 1, ...{ constructor: { prototype: { polluted: true } } } }),
    () => ({ toString: 1, valueOf: 2 }),
  ],
  ...[
    () => ({ length: 4, 0: 'a' }),
    () => ({ then: 1 }),
    () => [1, 'a', null, {}],
    () => ({ value: { spec: {} } }),
  ],
]

/** One value that shouldn't be there. */
export function hostileValue(chance: Chance): unknown {
  const from = chance.next()
  if (from < 0.3) return chance.oneOf(numbers)
  if (from < 0.6) return chance.oneOf(texts)
  return chance.oneOf(strangers)()
}

/** A name for a key that shouldn't be there. */
export const hostileKey = (chance: Chance): string =>
  chance.oneOf([
    '__proto__',
    'constructor',
    'prototype',
    'toString',
    'hasOwnProperty',
    'extra',
    '',
    '0',
    'id ',
    '\0',
  ])
