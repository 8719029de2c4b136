import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { keepPlace, notedPlace, notePlace, openingPlace } from '../../electron/placeNote.ts'
import { placeOn, readPlace, type Area, type WindowPlace } from '../../electron/windowPlace.ts'
import { makeRecorder } from './recorder.ts'

const laptop: Area = { x: 0, y: 25, width: 1366, height: 703 }
const beside: Area = { x: 1366, y: 0, width: 1920, height: 1040 }
const place = (x: number, y: number, width: number, height: number): WindowPlace => ({
  x,
  y,
  width,
  height,
  maximised: false,
})

test('a window opens where it stood, on whichever display that was', () => {
  expect(placeOn(place(100, 60, 1000, 600), [laptop, beside])).toEqual(place(100, 60, 1000, 600))
  expect(placeOn(place(1500, 80, 1200, 800), [laptop, beside])).toEqual(place(1500, 80, 1200, 800))
})

test('a window whose display is gone opens in the middle of the one that is there, and fits it', () => {
  expect(placeOn(place(1500, 80, 1200, 800), [laptop])).toEqual(place(83, 25, 1200, 703))
})

test('a window that hung over an edge comes in whole', () => {
  expect(placeOn(place(-300, -40, 1000, 600), [laptop])).toEqual(place(0, 25, 1000, 600))
  expect(placeOn(place(700, 500, 1000, 600), [laptop])).toEqual(place(366, 128, 1000, 600))
})

test('a first start opens in the middle, and a window that filled its display fills it again', () => {
  expect(placeOn(undefined, [beside])).toEqual(place(1646, 90, 1360, 860))
  expect(placeOn({ ...place(0, 25, 1000, 600), maximised: true }, [laptop]).maximised).toBe(true)
})

test('wherever it stood and whatever displays are left, the whole window lies on one of them', () => {
  const whole = (from: number, to: number) => fc.integer({ min: from, max: to })
  const area = fc.record({
    x: whole(-4000, 4000),
    y: whole(-3000, 3000),
    width: whole(900, 4000),
    height: whole(560, 2500),
  })
  const last = fc.record({
    x: whole(-9000, 9000),
    y: whole(-9000, 9000),
    width: whole(1, 9000),
    height: whole(1, 9000),
    maximised: fc.boolean(),
  })
  fc.assert(
    fc.property(last, fc.array(area, { minLength: 1, maxLength: 4 }), (stood, areas) => {
      const { x, y, width, height } = placeOn(stood, areas)
      const holds = (on: Area): boolean =>
        x >= on.x && y >= on.y && x + width <= on.x + on.width && y + height <= on.y + on.height
      return areas.some(holds)
    }),
    { numRuns: 500, seed: 20261 },
  )
})

test.each(['', '{', 'null', '[]', '{"x":1,"y":2,"width":3}', '{"x":1,"y":2,"width":"3","height":4}'])(
  'a note that holds %j gives no place',
  (text) => expect(readPlace(text)).toBeUndefined(),
)

test('a note of no size gives no place', () => {
  expect(readPlace('{"x":1,"y":2,"width":0,"height":4,"maximised":true}')).toBeUndefined()
  expect(readPlace('{"x":1e400,"y":2,"width":5,"height":4}')).toBeUndefined()
})

/** Electron's screen with these displays, the first of them the main one. */
const screenOf = (areas: Area[]) => {
  const displays = areas.map((workArea, id) => ({ id, workArea }))
  return makeRecorder({ getAllDisplays: () => displays, getPrimaryDisplay: () => displays[0] })
}

test('a window’s place is noted as it closes, and found by the next start', () => {
  const folder = mkdtempSync(join(tmpdir(), 'bracework-place-'))
  const path = join(folder, 'kept', 'window.json')
  const window = makeRecorder({
    getNormalBounds: () => ({ x: 40, y: 50, width: 1100, height: 620 }),
    isMaximized: () => true,
  })
  const screen = screenOf([laptop])
  keepPlace(window.object, screen.object, { path, log: () => undefined })
  window.handler('on', 'close')()
  const noted = { x: 40, y: 50, width: 1100, height: 620, maximised: true }
  expect(JSON.parse(readFileSync(path, 'utf8'))).toEqual(noted)
  expect(openingPlace(path, screen.object)).toEqual(noted)
  writeFileSync(path, '{"x":4')
  expect(notedPlace(path)).toBeUndefined()
  expect(openingPlace(path, screen.object)).toMatchObject({ x: 3, y: 25, width: 1360, height: 703 })
  rmSync(folder, { recursive: true })
})

test('a disk that doesn’t take the note stops nothing and is told in the log', () => {
  const folder = mkdtempSync(join(tmpdir(), 'bracework-place-'))
  mkdirSync(join(folder, 'window.json.new'))
  const log: string[] = []
  notePlace(join(folder, 'window.json'), place(1, 2, 903, 604), (line) => void log.push(line))
  expect(log).toEqual(['the window’s place can’t be noted'])
  rmSync(folder, { recursive: true })
})

test.each(['display-removed', 'display-metrics-changed'])(
  'a window comes back into view on %s, unless it fills its display',
  (event) => {
    for (const [fills, calls] of [
      [false, 1],
      [true, 0],
    ] as const) {
      const window = makeRecorder({
        getNormalBounds: () => ({ x: 1700, y: 90, width: 1200, height: 640 }),
        isMaximized: () => fills,
        isFullScreen: () => false,
        isDestroyed: () => false,
      })
      const screen = screenOf([laptop])
      keepPlace(window.object, screen.object, { path: '/nowhere', log: () => undefined })
      screen.handler('on', event)()
      const moved = window.calls.filter(({ name }) => name === 'setBounds')
      expect(moved).toHaveLength(calls)
      if (!fills) expect(moved[0]?.args).toEqual([{ x: 83, y: 57, width: 1200, height: 640 }])
    }
  },
)
