import { expect, test } from 'vitest'
import { commandsAt, commandsFor, keyWords } from '../../renderer/palette/commands.ts'
import { deedAndJob, jobCommand } from '../../renderer/palette/deedsFor.ts'
import { topicById } from '../../renderer/help/findHelp.ts'
import { topicOf } from '../../renderer/help/topic.ts'
import {
  addressOf,
  jobParts,
  placeAt,
  priceSheets,
  timberSheets,
  type Place,
} from '../../renderer/stores/place.ts'

const job: Place = { name: 'job', id: 7, part: 'gate' }

test('on a job its own come first, elsewhere there are none of a job', () => {
  expect(commandsAt(job)[0]?.go).toEqual({ name: 'job', id: 7, part: 'gate' })
  expect(commandsAt({ name: 'jobs' }).some(({ says }) => says.startsWith('This job'))).toBe(false)
})

test.each([
  ['ne jo', 'start'],
  ['rais', 'rise'],
  ['Back Up', 'copies'],
  ['offcuts', 'rack'],
  ['quote', 'quote'],
  ['accept', 'accept'],
  ['hours', 'labour'],
  ['same', 'again'],
])('“%s” finds %s', (typed, id) => {
  expect(commandsFor(commandsAt(job), typed)[0]?.id).toBe(id)
})

test.each([
  ['quote hartwhistle', { deeds: ['quote', 'quotations', 'accept'], rest: 'hartwhistle' }],
  ['marsh lane issue card', { deeds: ['issue'], rest: 'marsh lane' }],
  ['print 2 marsh', { deeds: ['print'], rest: 'marsh', revision: 2 }],
  ['print 12', { deeds: ['print'], rest: '12' }],
  ['Größe', { deeds: [], rest: '' }],
  ['quote', { deeds: [], rest: '' }],
])('“%s” names a deed and a job together, or not', (typed, meant) => {
  expect(deedAndJob(typed)).toEqual(meant)
})

test('what is done with a job leads to that job, wherever one stands', () => {
  expect(jobCommand('order-for', 23)?.go).toEqual({ name: 'timber', sheet: 'make', job: 23 })
  expect(jobCommand('again', 23)).toMatchObject({ does: 'again', job: 23 })
  expect(jobCommand('no such deed', 23)).toBeUndefined()
})

test('every word typed must be found', () => {
  expect(commandsFor(commandsAt(job), 'raise elephants')).toEqual([])
})

test('each command does one thing, and its place has an address of its own', () => {
  for (const command of commandsAt(job)) {
    expect([command.go, command.does].filter((one) => one !== undefined)).toHaveLength(1)
    if (command.go) expect(placeAt(addressOf(command.go))).toEqual(command.go)
  }
})

test('an open card, a job to order for and a percent have addresses too', () => {
  const kept: Place[] = [
    { name: 'job', id: 7, part: 'papers', paper: 31 },
    { name: 'timber', sheet: 'make', job: 7 },
    { name: 'prices', part: 'percent' },
  ]
  for (const place of kept) expect(placeAt(addressOf(place))).toEqual(place)
  expect(placeAt('#/job/7/gate/31')).toEqual({ name: 'job', id: 7, part: 'gate' })
  expect(placeAt('#/timber/make/none')).toEqual({ name: 'timber', sheet: 'make' })
})

test('a key is written as the machine has it', () => {
  expect(keyWords({ name: 'N' }, false)).toBe('Ctrl+N')
  expect(keyWords({ name: 'N' }, true)).toBe('⌘N')
  expect(keyWords({ name: 'F1', plain: true }, true)).toBe('F1')
})

test('help knows something of every place', () => {
  const places: Place[] = [
    ...['jobs', 'cards', 'workshop', 'estimates', 'prices'].map((name) => placeAt(`#/${name}`)),
    ...jobParts.map((part): Place => ({ name: 'job', id: 1, part })),
    ...priceSheets.map((sheet): Place => ({ name: 'job', id: 1, part: 'price', sheet })),
    ...timberSheets.map((sheet) => placeAt(`#/timber/${sheet}`)),
  ]
  for (const place of places) expect(topicById(topicOf(place)), addressOf(place)).toBeDefined()
})
