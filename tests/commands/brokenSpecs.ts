import { readFileSync } from 'node:fs'
import { exampleSpecs } from './runCommand.ts'

const whole = readFileSync(exampleSpecs.find(({ name }) => name === 'garden-gate')?.path ?? '', 'utf8')
const ledged = readFileSync(exampleSpecs.find(({ name }) => name === 'shed-door-ledged')?.path ?? '', 'utf8')

type Loose = Record<string, unknown>

/** The sound spec with one thing changed in it, as text. */
function changed(change: (spec: Loose) => void, from = whole): string {
  const spec = JSON.parse(from) as Loose
  change(spec)
  return JSON.stringify(spec)
}

/** An object inside the spec by its path. */
const at = (spec: Loose, path: string): Loose =>
  path.split('.').reduce<Loose>((inner, key) => inner[key] as Loose, spec)

const put = (path: string, value: unknown) => {
  const keys = path.split('.')
  const last = keys.pop() as string
  return changed((spec) => {
    ;(keys.length > 0 ? at(spec, keys.join('.')) : spec)[last] = value
  })
}

/** A number that no JSON writer would put: written into the text by hand. */
const raw = (key: string, value: string): string =>
  whole.replace(new RegExp(`("${key}": )[^,\\n]+`), `$1${value}`)

export type BrokenSpec = {
  name: string
  content: string | Uint8Array
  /** The fields that must each be named at the start of a line. */
  fields: string[]
  /** How many lines there must be; as many as the fields where it isn't said. */
  lines?: number
  says?: string
}

const section = { name: 's', species: 'oak', thickness: 45, width: 95 }

export const brokenSpecs: BrokenSpec[] = [
  {
    name: 'a key left out',
    content: changed((spec) => delete spec['boards']),
    fields: ['boards'],
    says: 'missing',
  },
  {
    name: 'a key left out inside',
    content: changed((spec) => delete at(spec, 'boards.section')['thickness']),
    fields: ['boards.section.thickness'],
  },
  { name: 'an unknown key', content: put('colour', 'green'), fields: ['colour'], says: 'unknown key' },
  {
    name: 'two unknown keys and one inside',
    content: changed((spec) => Object.assign(spec, { one: 1, two: 2, top: { shape: 'level', three: 3 } })),
    fields: ['one', 'two', 'top.three'],
  },
  {
    name: 'a timber by a name that every object has',
    content: whole.replace(
      '{',
      '{ "timbers": { "__proto__": { "density": 512 }, "ekki": { "density": 1010 } },',
    ),
    fields: ['timbers.__proto__'],
    says: 'unknown key',
  },
  {
    name: 'such names at the top and inside, beside another fault',
    content: whole
      .replace('{', '{ "toString": 1, "constructor": { "hung": "left" },')
      .replace('"size": {', '"size": { "__proto__": {},')
      .replace('"version": 1', '"version": 2'),
    fields: ['version', 'toString', 'constructor', 'size.__proto__'],
  },
  {
    name: 'a text for a number',
    content: put('size.width', '920'),
    fields: ['size.width'],
    says: "got '920'",
  },
  { name: 'NaN as text', content: put('boards.gap', 'NaN'), fields: ['boards.gap'] },
  { name: 'NaN unquoted', content: raw('width', 'NaN'), fields: ['input'], says: 'not JSON' },
  { name: 'nought for a size', content: put('size.height', 0), fields: ['size.height'], says: 'over 0' },
  { name: 'a negative inset', content: put('ledges.hangingInset', -1), fields: ['ledges.hangingInset'] },
  { name: 'a number past any gate', content: raw('height', '1e308'), fields: ['size.height'] },
  { name: 'a number past what numbers hold', content: raw('height', '1e999'), fields: ['size.height'] },
  {
    name: 'a length of 2147483648',
    content: put('boards.endTrim', 2_147_483_648),
    fields: ['boards.endTrim'],
  },
  {
    name: 'a cover too narrow to lay',
    content: put('boards.section.width', 1e-9),
    fields: ['boards.section.width'],
  },
  {
    name: 'a groove as deep as the cover',
    content: put('boards.section.groove', 112),
    fields: ['boards.section.groove'],
  },
  { name: 'null for an object', content: put('ledges', null), fields: ['ledges'], says: 'got null' },
  {
    name: 'a list for an object',
    content: put('fixings', [1, 2]),
    fields: ['fixings'],
    says: 'got a list of 2, accepted is an object with kind',
  },
  { name: 'a list for the whole', content: '[]', fields: ['input'], says: 'got a list of 0' },
  { name: 'a text for the whole', content: '"gate"', fields: ['input'] },
  {
    name: 'brackets nested deep',
    content: `${'['.repeat(100_000)}${']'.repeat(100_000)}`,
    fields: ['input'],
    says: 'nest deeper',
  },
  { name: 'an empty file', content: '', fields: ['input'], says: 'empty' },
  { name: 'spaces alone', content: ' \n\t\n', fields: ['input'], says: 'empty' },
  { name: 'no JSON', content: 'width = 920\nheight = 1830\n', fields: ['input'], says: 'not JSON' },
  {
    name: 'a file cut short',
    content: whole.slice(0, whole.length / 2),
    fields: ['input'],
    says: 'not JSON',
  },
  {
    name: 'UTF-16 with its mark',
    content: new Uint8Array(Buffer.from(`\uFEFF${whole}`, 'utf16le')),
    fields: ['input'],
    says: 'UTF-8',
  },
  {
    name: 'bytes that are no text',
    content: new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0xff, 0xfe, 0, 1, 2]),
    fields: ['input'],
    says: 'UTF-8',
  },
  {
    name: 'more text than any spec',
    content: `"${'x'.repeat(1_000_001)}"`,
    fields: ['input'],
    says: 'are accepted',
  },
  { name: 'a version to come', content: put('version', 2), fields: ['version'] },
  {
    name: 'braces on a ledged gate',
    content: changed(
      (spec) => Object.assign(spec, { braces: (JSON.parse(whole) as Loose)['braces'] }),
      ledged,
    ),
    fields: ['braces'],
  },
  {
    name: 'no braces on a braced gate',
    content: changed((spec) => delete spec['braces']),
    fields: ['braces'],
    says: 'missing',
  },
  {
    name: 'a framed gate without its frame',
    content: changed((spec) =>
      Object.assign(spec, {
        construction: 'framed-ledged-braced',
        ledges: { ...at(spec, 'ledges'), hangingInset: 0, closingInset: 0, end: { cut: 'square' } },
      }),
    ),
    fields: ['frame'],
    says: 'missing',
  },
  {
    name: 'a frame on an unframed gate',
    content: put('frame', { stile: section, topRail: section, tenon: 40, horn: 30, rebate: 10 }),
    fields: ['frame'],
  },
  {
    name: 'three leaves',
    content: put('leaves', 3),
    fields: ['leaves'],
    says: '3',
  },
  {
    name: 'a pair without its meeting gap',
    content: put('leaves', 2),
    fields: ['size.meetingGap'],
  },
  { name: 'a meeting gap on one leaf', content: put('size.meetingGap', 8), fields: ['size.meetingGap'] },
  {
    name: 'an opening measured at two widths only',
    content: put('size', {
      from: 'opening',
      widths: [940, 938],
      heights: [1880, 1884],
      hangingGap: 6,
      closingGap: 10,
      groundGap: 50,
    }),
    fields: ['size.widths[2]'],
  },
  {
    name: 'a raked top without its high side',
    content: put('top', { shape: 'raked', rise: 120 }),
    fields: ['top.high'],
    says: 'missing',
  },
  {
    name: 'a bowed top without a rise',
    content: put('top', { shape: 'bowed' }),
    fields: ['top.rise'],
    says: 'missing',
  },
  {
    name: 'a dipped top that dips by less than nothing',
    content: put('top', { shape: 'dipped', rise: -20 }),
    fields: ['top.rise'],
    says: '-20',
  },
  {
    name: 'a notch as words',
    content: changed((spec) => Object.assign(at(spec, 'braces'), { ends: 'notched', notchDepth: 'deep' })),
    fields: ['braces.notchDepth'],
    says: 'deep',
  },
  {
    name: 'notched braces without a depth',
    content: put('braces.ends', 'notched'),
    fields: ['braces.notchDepth'],
  },
  {
    name: 'an auto gap without a climate',
    content: put('boards.gap', 'auto'),
    fields: ['climate'],
  },
  {
    name: 'air wetter than it can be',
    content: changed((spec) => {
      at(spec, 'boards')['gap'] = 'auto'
      const air = { tempC: 12, rhPercent: 70 }
      spec['climate'] = { shop: air, wettest: { tempC: 12, rhPercent: 170 }, driest: air }
    }),
    fields: ['climate.wettest.rhPercent'],
    says: '170',
  },
  {
    name: 'a stable door whose halves overlap',
    content: put('stable', { lowerHeight: 1000, gap: -6 }),
    fields: ['stable.gap'],
    says: '-6',
  },
  {
    name: 'a foot that follows something else',
    content: put('foot', 'follows-stairs'),
    fields: ['foot'],
    says: 'follows-stairs',
  },
  {
    name: 'an unknown species',
    content: put('braces.section.species', 'greenheart'),
    fields: ['braces.section.species'],
    says: 'greenheart',
  },
  {
    name: 'a species described by what every object has',
    content: changed((spec) => {
      at(spec, 'boards.section')['species'] = 'ekki'
      spec['timbers'] = { ekki: { strengthClass: 'constructor' } }
    }),
    fields: ['boards.section.species'],
  },
  {
    name: 'heights that don’t match the count',
    content: changed((spec) => Object.assign(at(spec, 'ledges'), { count: 3, heights: [200, 1600] })),
    fields: ['ledges.heights'],
  },
  {
    name: 'keys that every object has',
    content: whole.replace('{', '{"__proto__": {"version": 1}, "constructor": 1, "toString": 2,'),
    fields: ['__proto__', 'constructor', 'toString'],
  },
  {
    name: 'a key that moves the cursor',
    content: whole.replace('{', '{"\\u001b[2Jgone\\r\\nsize.width: fine": 1,'),
    fields: [' [2Jgone size.width: fine'],
  },
  { name: 'a root thicker than its screw', content: put('fixings.root', 5.1), fields: ['fixings.root'] },
  { name: 'no length in stock', content: put('fixings.lengths', []), fields: ['fixings.lengths'] },
]

/** The same gate with a byte-order mark, as some editors leave it: to be read all the same. */
export const marked = `\uFEFF${whole}`

/** A gate whose ripped board is too narrow and whose brace doesn’t fit. */
export const stoppedSpec = changed((spec) => {
  Object.assign(at(spec, 'size'), { width: 700 })
  Object.assign(at(spec, 'boards'), { rip: 'closing' })
  Object.assign(at(spec, 'braces'), { footSetback: 400, headSetback: 300 })
})
