import { describe, expect, it } from 'vitest'
import { membersOf } from '../../shared/gate/holeMembers.ts'
import type { Design } from '../../shared/gate/designModel.ts'
import { parseSpec } from '../../shared/gate/parseSpec.ts'
import type { GateSpec } from '../../shared/gate/spec.ts'
import { exampleSpecs, readJson } from '../commands/runCommand.ts'
import { designOf, gateWith } from '../fixtures/gates.ts'

/** Every unit a figure may carry; a bare number is a ratio. */
const units = ['mm', '°', 'no.', 'kg', 'kg/m³', 'N', 'N/mm²', '%', 'm²', 'm³', 'm/s', 'Pa', 'N/m²', '']

const examples = exampleSpecs.map(({ name, path }) => {
  const read = parseSpec(readJson(path))
  if (!read.ok) throw new Error(`${name}: ${read.problems.map(({ field }) => field).join(', ')}`)
  return { name, spec: read.value, made: designOf(read.value) }
})

/** Every number that a design shows, with the id under which it answers for itself. */
function shown(spec: GateSpec, { leaves, holes, sawSettings, cuts }: Design): [string, number][] {
  const leaf = leaves[0]
  if (!leaf) throw new Error('no leaf')
  const list: [string, number | null | undefined][] = [
    ['leaf.width', leaf.width],
    ['leaf.height', leaf.height],
    ['boards.count', leaf.boards.length],
    ['ledges.count', leaf.ledges.length],
    ['fixings.count', leaf.fixings.length],
  ]
  leaf.boards.forEach((board, i) => {
    for (const name of ['x', 'width', 'length', 'blank', 'fence'] as const)
      list.push([`board.${i + 1}.${name}`, board[name]])
    for (const edge of ['hanging', 'closing'] as const)
      if (board.strip[edge] > 0) list.push([`board.${i + 1}.strip.${edge}`, board.strip[edge]])
  })
  for (const ledge of leaf.ledges)
    for (const name of ['y', 'length', 'shortLength'] as const)
      list.push([`ledge.${ledge.name}.${name}`, ledge[name]])
  for (const brace of leaf.braces)
    for (const name of [
      'angle',
      'sawSetting',
      'edgeLength',
      'length',
      'contact',
      'clearHeight',
      'run',
    ] as const)
      list.push([`brace.${brace.name}.${name}`, brace[name]])
  leaf.fixings.forEach((fixing, i) =>
    list.push([`fixing.${i + 1}.x`, fixing.x], [`fixing.${i + 1}.y`, fixing.y]),
  )
  const members = membersOf(spec, leaf.fixings)
  holes.forEach((hole, i) => {
    const id = `hole.${members[i]?.key}`
    list.push(
      [`${id}.length`, hole.fixingLength],
      [`${id}.penetration`, hole.penetration],
      [`${id}.quantity`, hole.quantity],
    )
    for (const name of ['clearance', 'lead', 'countersink'] as const)
      list.push([`${id}.${name}`, hole[name]?.exact], [`${id}.${name}Drill`, hole[name]?.drill])
  })
  sawSettings.forEach((row, i) => {
    for (const name of ['depth', 'angle', 'cutAt', 'fence'] as const)
      list.push([`saw.${i + 1}.${name}`, row[name]])
    for (const { side, at } of row.guideLines) list.push([`saw.${i + 1}.guide.${side}`, at])
  })
  cuts.forEach((row, i) => {
    for (const name of ['length', 'blank', 'quantity'] as const)
      list.push([`cut.${i + 1}.${name}`, row[name]])
  })
  return list.filter((entry): entry is [string, number] => typeof entry[1] === 'number')
}

describe('every figure', () => {
  it.each(examples)('of $name says its formula, what was put in, and its source', ({ made }) => {
    const figures = Object.entries(made.figures)
    expect(figures.length).toBeGreaterThan(100)
    for (const [id, { value, unit, formula, inputs, source }] of figures) {
      expect(Number.isFinite(value), id).toBe(true)
      expect(formula.trim(), id).not.toBe('')
      expect(source.trim(), id).not.toBe('')
      expect(units, id).toContain(unit)
      expect(Object.keys(inputs), id).not.toEqual([])
      for (const [name, put] of Object.entries(inputs)) {
        expect(name.trim(), id).not.toBe('')
        expect(Number.isFinite(put), `${id} ${name}`).toBe(true)
      }
    }
  })

  it.each(examples)('stands for the number that $name shows, and none is shown without', ({ spec, made }) => {
    const numbers = shown(spec, made)
    expect(numbers.length).toBeGreaterThan(100)
    for (const [id, value] of numbers) {
      expect(made.figures[id], id).toBeDefined()
      expect(made.figures[id]?.value, id).toBe(value)
    }
  })
})

describe('a formula', () => {
  const { figures } = designOf(gateWith({}))
  const told = (id: string) => {
    const { value, formula, inputs } = figures[id] ?? { value: Number.NaN, formula: '', inputs: {} }
    return { value, formula, put: Object.values(inputs) }
  }

  it('says how a board came to its width: full, without its groove, or what is left', () => {
    expect(told('board.5.width')).toEqual({ value: 112, formula: 'cover width of the section', put: [112] })
    expect(told('board.1.width')).toMatchObject({ value: 104, put: [112, 8] })
    expect(told('board.9.width').formula).toBe(
      'leaf width − other edge board − (count − 2) × cover − (count − 1) × gap',
    )
    expect(figures['board.9.width']?.inputs).toEqual({
      'leaf width': 950,
      'other edge board': 104,
      count: 9,
      cover: 112,
      gap: 1,
    })
  })

  it('worked through again gives its figure', () => {
    const put = (id: string) => figures[id]?.inputs ?? {}
    const ripped = put('board.9.width')
    const n = ripped['count'] ?? 0
    expect(
      (ripped['leaf width'] ?? 0) -
        (ripped['other edge board'] ?? 0) -
        (n - 2) * (ripped['cover'] ?? 0) -
        (n - 1) * (ripped['gap'] ?? 0),
    ).toBe(figures['board.9.width']?.value)
    const brace = put('brace.single.length')
    const radians = ((brace['angle'] ?? 0) * Math.PI) / 180
    expect(
      (brace['height spanned'] ?? 0) / Math.sin(radians) + (brace['width'] ?? 0) / Math.tan(radians),
    ).toBeCloseTo(figures['brace.single.length']?.value ?? 0, 9)
    const gravity = put('hole.ledges.gravity')
    const r = (gravity['density'] ?? 0) / (gravity['density of water'] ?? 1)
    expect(r / (1.12 - 0.108 * r)).toBeCloseTo(figures['hole.ledges.gravity']?.value ?? 0, 12)
  })
})
