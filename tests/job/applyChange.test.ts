import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { parseDraft } from '../../shared/gate/parseSpec.ts'
import { applyChanges } from '../../shared/job/applyChange.ts'
import type { Change } from '../../shared/job/job.ts'
import { aJob } from './aJob.ts'

function applied(changes: Change[], job = aJob()) {
  const result = applyChanges(job, changes)
  if (!result.ok) throw new Error(JSON.stringify(result.problems))
  return result.value
}

const refusedFields = (changes: Change[], job = aJob()): string[] => {
  const result = applyChanges(job, changes)
  return result.ok ? [] : result.problems.map((problem) => problem.field)
}

describe('changes to a job', () => {
  it('reach each of its own fields and the gate', () => {
    const { job } = applied([
      { path: 'title', value: 'Back gate' },
      { path: 'stage', value: 'quoted' },
      { path: 'due', value: null },
      { path: 'notes', value: 'ring first' },
      { path: 'customer.town', value: 'Kerf' },
      { path: 'spec.hung', value: 'left' },
      { path: 'spec.boards.section.width', value: 113 },
      { path: 'spec.ledges.heights', value: [200, 1600] },
      { path: 'spec.ledges.heights.1', value: 1590 },
      { path: 'spec.site.gustMs', value: 24 },
    ])
    expect(job).toMatchObject({
      title: 'Back gate',
      stage: 'quoted',
      due: null,
      notes: 'ring first',
      customer: { id: 8, town: 'Kerf' },
    })
    expect(job.entry.spec).toMatchObject({
      hung: 'left',
      boards: { section: { width: 113, thickness: 20 } },
      ledges: { heights: [200, 1590] },
      site: { gustMs: 24 },
    })
  })

  it('leave the job they start from as it was', () => {
    const job = aJob()
    const before = structuredClone(job)
    applied(
      [
        { path: 'spec.boards.section.width', value: 113 },
        { path: 'title', value: 'x' },
      ],
      job,
    )
    expect(job).toEqual(before)
  })

  it('take a brace and its construction out together, with the words typed for it', () => {
    const job = aJob()
    job.entry.typed['braces.footSetback'] = '1 1/2"'
    expect(refusedFields([{ path: 'spec.construction', value: 'ledged' }], job)).toEqual(['spec.braces'])
    const { job: after, kept } = applied(
      [
        { path: 'spec.construction', value: 'ledged' },
        { path: 'spec.braces', value: null },
      ],
      job,
    )
    expect(after.entry.spec).not.toHaveProperty('braces')
    expect(after.entry.typed).toEqual({ 'size.width': '915', 'size.height': '1.8 m' })
    expect(kept.map((change) => change.path)).toEqual([
      'spec.construction',
      'spec.braces',
      'typed.braces.footSetback',
    ])
    expect(kept[1]).toEqual({ path: 'spec.braces', before: job.entry.spec.braces, after: null })
  })

  it('empty a size without taking its key out', () => {
    expect(applied([{ path: 'spec.size.width', value: null }]).job.entry.spec.size).toEqual({
      from: 'leaf',
      width: null,
      height: 1800,
    })
  })

  it('are refused whole, each problem with its path', () => {
    const fields = refusedFields([
      { path: 'title', value: 7 },
      { path: 'stage', value: 'sold' },
      { path: 'due', value: '2026-02-29' },
      { path: 'customer.id', value: 1 },
      { path: 'number', value: '2026-999' },
      { path: 'sample', value: true },
      { path: 'spec', value: {} },
      { path: 'spec.nonsense', value: 1 },
      { path: 'spec.size.width', value: 0 },
      { path: 'spec.boards.gap.inner', value: 1 },
      { path: 'spec.ledges.end', value: { cut: 'mitred' } },
      { path: 'spec.leaves', value: 2 },
    ])
    expect(fields).toEqual([
      'title',
      'stage',
      'due',
      'customer.id',
      'number',
      'sample',
      'spec',
      'spec.nonsense',
      'spec.boards.gap.inner',
      'spec.size.width',
      'spec.ledges.end.cut',
    ])
  })

  it('never reach past an object’s own keys', () => {
    const polluting = JSON.parse('{ "__proto__": { "hung": "left" } }') as unknown
    const paths = [
      'spec.__proto__.hung',
      'spec.constructor.prototype',
      'spec.timbers.constructor.x',
      'customer.constructor',
      '__proto__.x',
    ]
    for (const path of paths) expect(refusedFields([{ path, value: 'x' }])).toContain(path)
    expect(refusedFields([{ path: 'spec.timbers', value: polluting }])).toEqual(['spec.timbers'])
    expect({}).not.toHaveProperty('hung')
  })

  it('take the last real day of a month and not the one after', () => {
    expect(refusedFields([{ path: 'due', value: '2028-02-29' }])).toEqual([])
    expect(refusedFields([{ path: 'due', value: '2026-04-31' }])).toEqual(['due'])
  })
})

describe('words typed for a length', () => {
  it('are kept beside the value, replaced with it, and forgotten with an empty text', () => {
    const kept = applied([{ path: 'spec.size.width', value: 930.275, typed: ' 36 5/8" ' }]).job
    expect(kept.entry).toMatchObject({
      spec: { size: { width: 930.275 } },
      typed: { 'size.width': '36 5/8"' },
    })
    expect(applied([{ path: 'spec.size.width', value: 930.275, typed: '' }], kept).job.entry.typed).toEqual({
      'size.height': '1.8 m',
    })
  })

  it('are kept though not understood, the value standing as it was', () => {
    const { job, kept } = applied([{ path: 'spec.size.width', value: 915, typed: 'about so wide' }])
    expect(job.entry).toMatchObject({
      spec: { size: { width: 915 } },
      typed: { 'size.width': 'about so wide' },
    })
    expect(kept).toEqual([{ path: 'typed.size.width', before: '915', after: 'about so wide' }])
  })

  it('go when the value moves without words, since they would now say something else', () => {
    expect(applied([{ path: 'spec.size.width', value: 920 }]).job.entry.typed).toEqual({
      'size.height': '1.8 m',
    })
    expect(applied([{ path: 'spec.size.width', value: 915 }]).job.entry.typed).toHaveProperty(
      ['size.width'],
      '915',
    )
  })

  it('that a new unit would give another meaning go, those that say their unit or were never understood stay', () => {
    const job = aJob()
    job.entry.typed['boards.gap'] = 'a penny’s breadth'
    const { job: after, kept } = applied([{ path: 'unit', value: 'in' }], job)
    expect(after.entry).toEqual({
      spec: job.entry.spec,
      typed: { 'size.height': '1.8 m', 'boards.gap': 'a penny’s breadth' },
    })
    expect(kept).toContainEqual({ path: 'typed.size.width', before: '915', after: null })
  })

  it('of a diagonal that waits for the other stay with no survey made of it, and mean the same in another unit', () => {
    const { job } = applied([{ path: 'spec.survey.diagonals.0', value: null, typed: '2133.6' }])
    expect(job.entry.spec).not.toHaveProperty('survey')
    expect(job.entry.typed['survey.diagonals.0']).toBe('2133.6')
    const inches = applied([{ path: 'unit', value: 'in' }], job).job
    expect(inches.entry.typed['survey.diagonals.0']).toBe('84"')
    const none = applied([{ path: 'spec.survey.diagonals.0', value: null, typed: '' }], inches).job
    expect(none.entry.typed).not.toHaveProperty(['survey.diagonals.0'])
  })

  it('belong to lengths of the gate only', () => {
    expect(refusedFields([{ path: 'title', value: 'x', typed: 'x' }])).toEqual(['title'])
  })
})

describe('another window’s edit', () => {
  it('is told when it is written over, and stands in what is kept', () => {
    const { overlaps, kept, job } = applied([{ path: 'spec.size.width', value: 900, was: 1000 }])
    expect(overlaps).toEqual([{ path: 'spec.size.width', theirs: 915, mine: 900 }])
    expect(kept[0]).toEqual({ path: 'spec.size.width', before: 915, after: 900 })
    expect(job.entry.spec.size).toMatchObject({ width: 900 })
  })

  it('isn’t told when nothing is lost: same belief, same value, nothing believed, or the call’s own step between', () => {
    const quiet: Change[][] = [
      [{ path: 'spec.size.width', value: 900, was: 915 }],
      [{ path: 'spec.size.width', value: 915, was: 1000 }],
      [{ path: 'spec.size.width', value: 900 }],
      [
        { path: 'spec.size.width', value: 91, was: 915 },
        { path: 'spec.size.width', value: 912, was: 91 },
        { path: 'spec.size.width', value: 914, was: 915 },
      ],
      [{ path: 'spec.ledges.end', value: { cut: 'square' }, was: { angle: 15, cut: 'bevelled' } }],
      [{ path: 'spec.site', value: { gustMs: 20 }, was: null }],
    ]
    for (const changes of quiet) expect(applied(changes).overlaps).toEqual([])
  })

  it('is told for a part taken out, with the whole part', () => {
    const changes = [
      { path: 'spec.construction', value: 'ledged' },
      { path: 'spec.braces', value: null, was: { run: 'in-line' } },
    ]
    expect(applied(changes).overlaps).toEqual([
      { path: 'spec.braces', theirs: aJob().entry.spec.braces, mine: null },
    ])
  })
})

describe('any list of changes (500 seeded)', () => {
  const fitting: fc.Arbitrary<Change> = fc.oneof(
    fc.record({
      path: fc.constantFrom('title', 'notes', 'customer.name'),
      value: fc.string({ maxLength: 40 }),
    }),
    fc.record({
      path: fc.constantFrom('spec.size.width', 'spec.size.height'),
      value: fc.option(fc.double({ min: 1, max: 3000, noNaN: true })),
    }),
    fc.record({
      path: fc.constantFrom('spec.boards.gap', 'spec.site.pinInset'),
      value: fc.double({ min: 0, max: 50, noNaN: true }),
      typed: fc.string({ maxLength: 20 }),
    }),
    fc.record({ path: fc.constant('unit'), value: fc.constantFrom('mm', 'in') }),
    fc.record({ path: fc.constant('spec.ledges.count'), value: fc.constantFrom(2, 3, 'auto') }),
  )
  const anything: fc.Arbitrary<Change> = fc.record({
    path: fc.oneof(
      fc.constantFrom('spec.braces', 'spec.ironmongery.0', 'spec.timbers', 'due', 'spec.version'),
      fc.string(),
    ),
    value: fc.jsonValue({ maxDepth: 2 }),
    was: fc.jsonValue({ maxDepth: 1 }),
  })
  const lists = fc.array(fc.oneof({ weight: 9, arbitrary: fitting }, { weight: 1, arbitrary: anything }), {
    minLength: 1,
    maxLength: 5,
  })

  it('gives a job whose gate still reads, or problems, and never throws', () => {
    const made = { whole: 0, refused: 0 }
    fc.assert(
      fc.property(lists, (changes) => {
        const result = applyChanges(aJob(), changes)
        made[result.ok ? 'whole' : 'refused'] += 1
        if (!result.ok) {
          expect(result.problems.filter((problem) => problem.message === '')).toEqual([])
          return
        }
        expect(parseDraft(result.value.job.entry.spec).ok).toBe(true)
        expect(result.value.job).toMatchObject({
          id: 3,
          number: '2026-003',
          version: 5,
          sample: false,
          customer: { id: 8 },
        })
      }),
      { seed: 20260304, numRuns: 500 },
    )
    expect(Math.min(made.whole, made.refused)).toBeGreaterThan(50)
  })
})
