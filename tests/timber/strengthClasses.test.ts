import { expect, test } from 'vitest'
import { strengthClass } from '../../shared/timber/strengthClasses.ts'

test('a class is found whatever its capitals, and its source is second-hand', () => {
  expect(strengthClass(' c24 ')?.value.name).toBe('C24')
  expect(strengthClass('C24')).toMatchObject({ source: 'EN 338:2016 table 1', certainty: 'second-hand' })
  expect(strengthClass('C25')).toBeUndefined()
  expect(strengthClass('constructor')).toBeUndefined()
})
