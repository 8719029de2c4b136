import { globSync, readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { findTopics, helpOfCheck, helpOfField, topics } from '../../renderer/help/findHelp.ts'

const root = new URL('../../', import.meta.url)
const textOf = (path: string): string => readFileSync(new URL(path, root), 'utf8')

/** Fields that a component hands on: each screen that uses it names its own. */
const handedOn = new Set(['field', 'path', '0.groove', '0.tongue', '0.thickness', '0.width'])

/** What a component's own field is called where it stands: a piece of ironmongery, a value of a timber, the air of a place. */
function whereItStands(field: string): string {
  if (/^0\.(side|massKg|strapLength|maxLeafMassKg)$/.test(field)) return `ironmongery.${field}`
  if (/^0\.(tempC|rhPercent)$/.test(field)) return field.replace('0', 'climate.shop')
  return /^(strengthClass|durability|treated|stainsIron|fixings)$/.test(field)
    ? `timbers.Oak.${field}`
    : field
}

/** Every field named in a screen's template, what is put in while it runs standing as 0. */
function fieldsOf(text: string): string[] {
  const named = [...text.matchAll(/\s:?(?:path|field|data-field)="([^"]+)"/g)].map(([, value = '']) => value)
  return named.flatMap((value) => {
    const literal = /^[a-z][\w.]*$/i.test(value) ? [value] : []
    const quoted = [...value.matchAll(/'([a-z][\w.]*)'/gi)].map(([, one = '']) => one)
    const built = [...value.matchAll(/`([^`]+)`/g)].map(([, one = '']) => one.replace(/\$\{[^}]+\}/g, '0'))
    return [...literal, ...quoted, ...built]
  })
}

const screens = globSync('renderer/**/*.vue', { cwd: root })
const fields = [...new Set(screens.flatMap((path) => fieldsOf(textOf(path))))]
  .filter((field) => !handedOn.has(field))
  .map(whereItStands)

test('every field that a screen asks for has its help', () => {
  expect(fields.length).toBeGreaterThan(150)
  expect(fields.filter((field) => !(helpOfField(field) ?? '').trim())).toEqual([])
})

test('every finding of the check has its reason', () => {
  const sources = globSync('shared/**/*.ts', { cwd: root }).map(textOf)
  const ids = sources
    .filter((text) => /level: '/.test(text))
    .flatMap((text) => [...text.matchAll(/\bid: '([a-z]+(?:-[a-z]+)+)'/g)].map(([, id = '']) => id))
  expect(new Set(ids).size).toBeGreaterThan(60)
  expect([...new Set(ids)].filter((id) => !helpOfCheck(id))).toEqual([])
})

test('a field’s help is found by its path, by a star for its number, and by the last word of a section', () => {
  expect(helpOfField('size.widths.2')).toMatch(/clear opening at the foot, the middle and the head/)
  expect(helpOfField('spec.ledges.topSection.thickness')).toMatch(/^As planed/)
  expect(helpOfField('ironmongery.3.maxLeafMassKg')).toMatch(/heaviest leaf/)
  expect(helpOfField('climate.wettest.rhPercent')).toMatch(/how damp/)
  expect(helpOfField('nothing.of.the.kind')).toBeUndefined()
  expect(helpOfField('constructor')).toBeUndefined()
  expect(helpOfCheck('__proto__')).toBeUndefined()
})

test.each([
  ['sag', 'brace'],
  ['usb stick', 'keeping'],
  ['backup', 'keeping'],
  ['survey', 'opening'],
  ['swell', 'boards'],
  ['kerf', 'workshop'],
  ['hang', 'hanging'],
  ['merchant list', 'prices'],
])('looking for “%s” finds %s first', (typed, id) => {
  expect(findTopics(typed)[0]?.id).toBe(id)
})

test('without a word everything is listed, each topic once, with something to read', () => {
  expect(findTopics('  ')).toEqual(topics)
  expect(new Set(topics.map(({ id }) => id)).size).toBe(topics.length)
  for (const { parts } of topics)
    for (const part of parts) expect((part.says ?? part.steps ?? []).length).toBeGreaterThan(0)
})
