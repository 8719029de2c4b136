import { describe, expect, it } from 'vitest'
import { changeTold, inSittings } from '../../shared/happened/changeTold.ts'
import { pageOf, type Happening } from '../../shared/happened/happening.ts'
import { specChange } from '../../shared/happened/specChange.ts'
import { whatHappened, type JobPast } from '../../shared/happened/whatHappened.ts'

const at = (minute: number): string => new Date(Date.UTC(2026, 2, 2, 8, minute)).toISOString()
const told = (path: string, before: unknown, after: unknown): string | undefined =>
  changeTold({ path, before, after, at: at(0) }, 'mm')?.words

const nothing: JobPast = {
  ...{
    number: '2026-014',
    createdAt: at(0),
    unit: 'mm',
    changes: [],
    papers: [],
    acceptances: [],
    orders: [],
  },
  ...{ received: [], cut: [], work: [], notes: [], photographs: [] },
}

describe('a change told', () => {
  it.each([
    ['spec.size.width', 885, 900, 'Width: 900 mm, was 885'],
    ['spec.size.width', null, 912.5, 'Width: 912.5 mm'],
    ['spec.size.widths.2', 1003, 1004, 'Width of the opening at the foot: 1004 mm, was 1003'],
    ['spec.ledges.heights', 'auto', [210, 1630], 'Ledge heights: 210 mm, 1630 mm, was as usual'],
    ['spec.ledges.count', 2, 3, 'How many ledges: 3, was 2'],
    ['spec.ledges.weather', null, 7, 'Weathering of the ledges: 7°'],
    ['spec.boards.gap', 2.5, 'auto', 'Gap between boards: from the weather, was 2.5 mm'],
    ['spec.hung', 'left', 'right', 'Hung, seen from the face: on the right, was on the left'],
    ['spec.construction', 'ledged', 'ledged-braced', 'Construction: ledged and braced, was ledged'],
    ['spec.braces', null, { footSetback: 50, headSetback: 51 }, 'Brace: put in'],
    ['spec.braces', { footSetback: 50, headSetback: 51 }, null, 'Brace: taken out'],
    ['spec.workshop.saws', [{ name: 'Saw', kerf: 3 }], [{ name: 'Saw', kerf: 2 }], 'Saws and drills changed'],
    ['stage', 'enquiry', 'surveyed', 'Moved on from Enquiry to Surveyed'],
    ['due', '2026-06-01', '2026-06-03', 'Promised for 3 June 2026, was 1 June 2026'],
    ['due', '2026-06-01', null, 'No longer promised for 1 June 2026'],
    ['unit', 'mm', 'in', 'Measured in inches, was mm'],
    ['customer.phone', '', '01632 960002', 'Telephone: “01632 960002”'],
    ['customer.town', 'Much Test', 'Nether Test', 'Town: “Nether Test”, was “Much Test”'],
    ['notes', 'dog', 'dog in the yard', 'Standing note changed. It said “dog”'],
    ['madeAgainFrom', null, '2024-007', 'Made again from job 2024-007'],
    ['broughtIn', null, '2025-031', 'Brought in from another book, where it was job 2025-031'],
    ['note.3.words', 'ring frist', 'ring first', 'A note mended. It said “ring frist”'],
    ['photograph.2.words', '', 'the leaning post', 'Photograph 2: “the leaning post”'],
    ['photograph.2.putAway', false, true, 'Photograph 2 taken away'],
    ['photograph.2.putAway', true, false, 'Photograph 2 put back'],
  ])('%s from %j to %j is “%s”', (path, before, after, words) => {
    expect(told(path, before, after)).toBe(words)
  })

  it('names a section that took the place of another, and what changed in one that stayed', () => {
    const ex125 = { name: 'ex 25 × 125', species: 'larch', thickness: 20, width: 112 }
    expect(specChange(['boards.section', ex125, { ...ex125, name: 'ex 25 × 100', width: 88 }], 'mm')).toBe(
      'Boards: ex 25 × 100, was ex 25 × 125',
    )
    expect(specChange(['boards.section', ex125, { ...ex125, width: 111 }], 'mm')).toBe('Boards changed')
  })

  it('says ironmongery by piece, lengths of an inch job in inches, and cuts long texts', () => {
    const hinge = { id: 'h', kind: 'hinge', name: 'strap hinge 450', quantity: 2 }
    expect(specChange(['ironmongery', [], [hinge]], 'mm')).toBe('Ironmongery: 2 × strap hinge 450, was none')
    expect(specChange(['size.height', 1803.4, 1828.8], 'in')).toBe('Height: 72″, was 71″')
    expect(told('title', 'x'.repeat(400), 'gate')).toBe(`What it is: “gate”, was “${'x'.repeat(120)}…”`)
  })

  it('leaves out the words a length was typed in, and paths that nobody knows', () => {
    expect(told('typed.size.width', null, '36 5/8')).toBeUndefined()
    expect(told('something', 1, 2)).toBeUndefined()
  })
})

describe('many keys in one entry', () => {
  const key = (minute: number, before: unknown, after: unknown, path = 'title') => ({
    path,
    before,
    after,
    at: at(minute),
  })

  it('within ten minutes of each other are one, from the first to the last, others between them or not', () => {
    const kept = inSittings([
      key(0, '', 'S'),
      key(1, 8, 9, 'spec.size.width'),
      key(9, 'S', 'Si'),
      key(18, 'Si', 'Side'),
    ])
    expect(kept).toEqual([key(18, '', 'Side'), key(1, 8, 9, 'spec.size.width')])
  })

  it('after a longer rest are another', () => {
    expect(inSittings([key(0, '', 'S'), key(11, 'S', 'Si')])).toEqual([key(0, '', 'S'), key(11, 'S', 'Si')])
  })

  it('that came back to where it was are none; a stage moved there and back is two', () => {
    expect(inSittings([key(0, 'a', 'ab'), key(1, 'ab', 'a')])).toEqual([])
    expect(inSittings([key(0, 'enquiry', 'hung', 'stage'), key(1, 'hung', 'enquiry', 'stage')])).toHaveLength(
      2,
    )
  })
})

describe('what happened on a job', () => {
  it('is told from all that is kept of it, oldest first', () => {
    const past: JobPast = {
      ...nothing,
      changes: [{ path: 'stage', before: 'enquiry', after: 'quoted', at: at(6) }],
      papers: [
        { kind: 'quotation', revision: 1, at: at(5) },
        { kind: 'job-card', revision: 2, at: at(40) },
      ],
      acceptances: [{ revision: 1, on: '2026-03-01', note: 'by telephone', at: at(7) }],
      orders: [{ number: '2026-T03', at: at(20), cancelledAt: null, lengths: 14 }],
      received: [
        { number: '2026-T03', count: 4, on: '2026-03-02', at: at(30) },
        { number: '2026-T03', count: 2, on: '2026-03-02', at: at(31) },
        { number: '2026-T03', count: 8, on: '2026-03-03', at: at(32) },
      ],
      cut: [{ number: '2026-T03', count: 3, on: '2026-03-03', at: at(50) }],
      work: [
        { what: 'hours', quantity: 1.5, note: '', at: at(55) },
        { what: 'timber', quantity: 7.25, note: '', at: at(56) },
        { what: 'cost', quantity: 1250, note: 'skip', at: at(57) },
      ],
      notes: [{ words: 'Ring before coming.', at: at(2) }],
      photographs: [{ at: at(3) }, { at: at(3) }, { at: at(4) }],
    }
    expect(whatHappened(past).map(({ words }) => words)).toEqual([
      'Job 2026-014 started',
      'Note: “Ring before coming.”',
      '3 photographs added',
      'Quotation 1 issued, to send',
      'Moved on from Enquiry to Quoted',
      'Quotation 1 accepted on 1 March 2026: “by telephone”',
      'Timber ordered, order 2026-T03',
      'Timber of order 2026-T03 came: 6 lengths, 6 of 14 are here',
      'Timber of order 2026-T03 came: 8 lengths, all of it is here',
      'Card 2 issued',
      'Timber of order 2026-T03 cut: 3 lengths',
      'It took 1.5 hours',
      'It took 7.25 m of timber',
      'It cost 12.50: “skip”',
    ])
  })
})

describe('the log in pages', () => {
  const lines = Array.from({ length: 450 }, (_, n): Happening => ({
    ...{ at: at(n), kind: n % 3 === 0 ? 'gate' : 'notes', words: `line ${n}` },
  }))

  it('gives 200 at a time, newest first, none twice and none left out, also when newer ones come meanwhile', () => {
    const first = pageOf(lines, null, null)
    const more = [...lines, { at: at(999), kind: 'job' as const, words: 'new' }]
    const second = pageOf(more, null, first.earlier)
    const third = pageOf(more, null, second.earlier)
    expect([first.earlier, second.earlier, third.earlier]).toEqual([250, 50, 0])
    const words = [first, second, third].flatMap((page) => page.lines.map((line) => line.words))
    expect(words).toEqual(lines.map((line) => line.words).reverse())
  })

  it('counts only the lines of one kind when that is asked for', () => {
    const page = pageOf(lines, 'gate', null)
    expect(page.lines).toHaveLength(150)
    expect(new Set(page.lines.map(({ kind }) => kind))).toEqual(new Set(['gate']))
  })
})
