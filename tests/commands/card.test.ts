import { spawnSync } from 'node:child_process'
import {
  existsSync,
  readdirSync,
  readFileSync,
  statSync,
  truncateSync,
  writeFileSync,
  mkdirSync,
} from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { runCard } from '../../electron/commands/runCard.ts'
import { design } from '../../shared/gate/design.ts'
import type { Design } from '../../shared/gate/designModel.ts'
import type { GateSpec } from '../../shared/gate/spec.ts'
import { everySo } from '../fixtures/sample.ts'
import { brokenSpecs, marked, stoppedSpec } from './brokenSpecs.ts'
import { exampleSpecs, inFolder, project, readJson, runCommand } from './runCommand.ts'

const parse = (out: string): Design => JSON.parse(out) as Design

describe('card', () => {
  it('has ten example specs to show', () => {
    expect(exampleSpecs).toHaveLength(10)
  })

  it.each(exampleSpecs)('prints the whole design of $name and ends well', async ({ path }) => {
    const { code, out, errors } = await runCard([path])
    expect(errors).toEqual([])
    expect(code).toBe(0)
    const made = parse(out)
    expect(Object.keys(made).sort()).toEqual(
      [
        'checks',
        'cuts',
        'engine',
        'figures',
        'fittings',
        'holes',
        'leaves',
        'movement',
        'sawSettings',
        'steps',
        'swing',
      ].sort(),
    )
    const leaf = made.leaves[0]
    expect(made.leaves).toHaveLength(1)
    for (const key of ['width', 'height', 'boards', 'ledges', 'braces', 'frame', 'fixings'])
      expect(leaf).toHaveProperty(key)
    for (const key of ['massKg', 'centre', 'hinges', 'loads', 'windN']) expect(leaf).toHaveProperty(key)
    for (const hinge of leaf?.hinges ?? [])
      for (const key of ['y', 'pullN', 'shareN']) expect(hinge).toHaveProperty(key)
    for (const board of leaf?.boards ?? [])
      for (const key of ['x', 'width', 'length', 'blank', 'fence']) expect(board).toHaveProperty(key)
    for (const ledge of leaf?.ledges ?? [])
      for (const key of ['name', 'y', 'length', 'shortLength']) expect(ledge).toHaveProperty(key)
    for (const brace of leaf?.braces ?? [])
      for (const key of ['name', 'angle', 'sawSetting', 'edgeLength', 'length', 'outline'])
        expect(brace).toHaveProperty(key)
    for (const fixing of leaf?.fixings ?? [])
      for (const key of ['x', 'y', 'joins']) expect(fixing).toHaveProperty(key)
    for (const row of made.cuts)
      for (const key of ['part', 'section', 'quantity', 'length', 'ends']) expect(row).toHaveProperty(key)
    expect(made.checks.filter(({ level }) => level === 'stop')).toEqual([])
  })

  it('writes the papers as PDF with --out, the same bytes each time, on A4 or Letter', async () => {
    await inFolder(async (folder) => {
      const path = exampleSpecs[0]?.path ?? ''
      const write = async (name: string, ...more: string[]) => {
        const out = join(folder, name, 'made on the way')
        const given = [path, '--out', out, ...more]
        const { code, errors } = await (name === 'a' ? runCommand('card', given) : runCard(given))
        expect([code, errors]).toEqual([0, []])
        const files = readdirSync(out)
        expect(files.length).toBeGreaterThan(0)
        return files.map((file) => readFileSync(join(out, file)))
      }
      const [once, again, letter] = [
        await write('a'),
        await write('b'),
        await write('c', '--paper', 'letter'),
      ]
      for (const bytes of [...once, ...letter]) expect(bytes.subarray(0, 5).toString()).toBe('%PDF-')
      expect(again.map((bytes, i) => bytes.equals(once[i] as Buffer))).toEqual(once.map(() => true))
      expect(letter[0]?.equals(once[0] as Buffer)).toBe(false)
    })
  })

  it('reads a spec that begins with a byte-order mark', async () => {
    await inFolder(async (folder) => {
      const path = join(folder, 'marked.json')
      writeFileSync(path, marked)
      expect((await runCommand('card', [path])).code).toBe(0)
    })
  })
})

describe('card with a whole gate', () => {
  const gates = [
    '07-notched-in-line-three',
    '24-framed-pair-bowed-heaviest',
    '28-stable-framed',
    '31-foot-follows-rising',
  ]

  it.each(gates)('prints %s in full, with its card and the sheets that go with it', async (name) => {
    await inFolder(async (folder) => {
      const path = join(project, `tests/fixtures/whole/${name}.json`)
      const { code, out, errors } = await runCard([path, '--out', folder])
      expect([code, errors]).toEqual([0, []])
      const spec = readJson(path) as GateSpec
      const outcome = design(spec)
      expect(parse(out)).toEqual(JSON.parse(JSON.stringify(outcome.made ? outcome.design : null)))
      expect(readdirSync(folder).sort()).toEqual([
        'care-note.pdf',
        'fitting-sheet.pdf',
        'full-size-sheets.pdf',
        'job-card.pdf',
        'part-labels.pdf',
        'worked-figures.pdf',
      ])
      for (const file of readdirSync(folder))
        expect(readFileSync(join(folder, file)).subarray(0, 5).toString()).toBe('%PDF-')
    })
  })
})

describe('card with a broken spec', () => {
  it('is tried with more than thirty of them', () => {
    expect(brokenSpecs.length).toBeGreaterThan(30)
  })

  it('ends quietly when whoever reads its output has had enough', async () => {
    const path = exampleSpecs[0]?.path ?? ''
    const command = join(project, 'electron/commands/card.ts')
    const { stdout, stderr, status } = spawnSync(
      'bash',
      ['-c', 'set -o pipefail; "$0" "$1" "$2" | head -c 1', process.execPath, command, path],
      { cwd: project, encoding: 'utf8' },
    )
    expect({ stdout, stderr, status }).toEqual({ stdout: '{', stderr: '', status: 0 })
  })

  it.each(brokenSpecs)(
    'says what is wrong with $name, a line a problem, and writes nothing',
    async (broken) => {
      await inFolder(async (folder) => {
        const path = join(folder, 'gate.json')
        const made = join(folder, 'papers')
        writeFileSync(path, broken.content)
        const { code, out, errors } = await runCard([path, '--out', made])
        expect(errors.join('\n')).not.toMatch(/^\s+at /m)
        expect(code, errors.join('\n')).toBe(2)
        expect(out).toBe('')
        expect(existsSync(made)).toBe(false)
        expect(errors).toHaveLength(broken.lines ?? broken.fields.length)
        for (const field of broken.fields)
          expect(errors.filter((line) => line.startsWith(`${field}: `))).not.toEqual([])
        for (const line of errors) expect(line).toMatch(/^[^:]+: \S/)
        if (broken.says !== undefined) expect(errors.join('\n')).toContain(broken.says)
        for (const line of errors) expect(line).not.toMatch(/\p{Cc}/u)
      })
    },
  )

  it('ends the same way as a process of its own, every eighth of them', async () => {
    for (const broken of everySo(8, brokenSpecs))
      await inFolder(async (folder) => {
        const path = join(folder, 'gate.json')
        writeFileSync(path, broken.content)
        const given = [path, '--out', join(folder, 'papers')]
        expect(await runCommand('card', given)).toEqual(await runCard(given))
        expect(readdirSync(folder)).toEqual(['gate.json'])
      })
  })

  it('says that a folder, a file that isn’t there or one past all size can’t be read', async () => {
    await inFolder(async (folder) => {
      const huge = join(folder, 'huge.json')
      writeFileSync(huge, '')
      truncateSync(huge, 3_000_000_000)
      expect(statSync(huge).size).toBe(3_000_000_000)
      mkdirSync(join(folder, 'sub'))
      for (const path of [join(folder, 'sub'), join(folder, 'absent.json'), huge, '/dev/null']) {
        const { code, out, errors } = await runCard([path])
        expect([code, out, errors.length]).toEqual([2, '', 1])
        expect(errors[0]).toMatch(/^input: /)
      }
    })
  })

  it.each([
    [[], 'arguments'],
    [['a.json', 'b.json'], 'arguments'],
    [['a.json', '--paper', 'a3'], '--paper'],
    [['a.json', '--out', ''], '--out'],
    [['a.json', '--colour'], 'arguments'],
    [['a.json', '--out'], 'arguments'],
  ])('refuses the words %j', async (args, field) => {
    const { code, out, errors } = await runCard(args)
    expect([code, out, errors.length]).toEqual([2, '', 1])
    expect(errors[0]?.startsWith(`${field}: `)).toBe(true)
  })

  it('refuses a folder that can’t be written to, and prints nothing', async () => {
    await inFolder(async (folder) => {
      const file = join(folder, 'taken')
      writeFileSync(file, 'a file stands here')
      const { code, out, errors } = await runCard([exampleSpecs[0]?.path ?? '', '--out', file])
      expect([code, out, errors.length]).toEqual([2, '', 1])
      expect(errors[0]).toMatch(/^--out: /)
      expect(readFileSync(file, 'utf8')).toBe('a file stands here')
    })
  })
})

describe('card with a gate that can’t be made', () => {
  it('prints what was found, a line a stop, and writes nothing', async () => {
    await inFolder(async (folder) => {
      const path = join(folder, 'gate.json')
      const papers = join(folder, 'papers')
      writeFileSync(path, stoppedSpec)
      const { code, out, errors } = await runCommand('card', [path, '--out', papers])
      expect(code).toBe(3)
      const stopped = parse(out)
      expect(Object.keys(stopped)).toEqual(['engine', 'leaves', 'checks'])
      expect(stopped.leaves).toEqual([])
      const stops = stopped.checks.filter(({ level }) => level === 'stop')
      expect(stops.map(({ id }) => id)).toContain('ripped-board-narrow')
      expect(stops.map(({ id }) => id)).toContain('brace-no-fit')
      expect(errors).toHaveLength(stops.length)
      stops.forEach((stop, i) => expect(errors[i]).toContain(stop.message))
      expect(existsSync(papers)).toBe(false)
    })
  })
})
