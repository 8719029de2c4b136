import { expect, test } from 'vitest'
import { layerFaults, projectSources } from '../../build/checkLayers.ts'

const faultsOf = (path: string, text: string): string[] => layerFaults([{ path, text }])

const badImports: readonly (readonly [path: string, text: string])[] = [
  ['shared/gate/leaf.ts', "import { openBook } from '../../db/open.ts'\nexport const a = openBook"],
  ['shared/gate/leaf.ts', "import type { Book } from '../../db/open.ts'\nexport type A = Book"],
  ['shared/gate/leaf.ts', "export const read = () => import('../../electron/log.ts')"],
  ['shared/gate/leaf.ts', "export { logLine } from '../../electron/log.ts'\nexport const a = 1"],
  ['shared/gate/leaf.ts', "import { join } from 'node:path'\nexport const a = join"],
  ['shared/gate/leaf.ts', "import { h } from 'vue'\nexport const a = h"],
  ['shared/gate/leaf.ts', "import type { Ref } from 'vue'\nexport type A = Ref"],
  ['db/jobs.ts', "import { logLine } from '../electron/log.ts'\nexport const a = logLine"],
  ['db/jobs.ts', "import { app } from 'electron'\nexport const a = app"],
  ['renderer/api.ts', "import type { Book } from '../db/open.ts'\nexport type A = Book"],
  ['renderer/api.ts', "import { join } from 'node:path'\nexport const a = join"],
  ['renderer/api.ts', "import Sqlite from 'better-sqlite3'\nexport const a = Sqlite"],
  ['renderer/api.ts', "import * as v from 'valibot'\nexport const a = v"],
  [
    'renderer/views/Job.vue',
    '<script setup lang="ts">\nimport { logLine } from \'../../electron/log.ts\'\n</script>',
  ],
  ['electron/window.ts', "import { format } from '../renderer/format.ts'\nexport const a = format"],
  ['electron/window.ts', "import { createApp } from 'vue'\nexport const a = createApp"],
  ['electron/window.ts', "import { PDFDocument } from 'pdf-lib'\nexport const a = PDFDocument"],
  ['electron/window.ts', "import { inProject } from '../build/paths.ts'\nexport const a = inProject"],
  ['electron/handlers/jobs.ts', "import Sqlite from 'better-sqlite3'\nexport const a = Sqlite"],
  [
    'electron/preload.ts',
    "import { requestNames } from '../shared/contract.ts'\nexport const a = requestNames",
  ],
  ['electron/preload.ts', "import { openBook } from '../db/open.ts'\nexport const a = openBook"],
  ['electron/preload.ts', "import { logLine } from './log.ts'\nexport const a = logLine"],
  ['electron/loopback/host.ts', "import express from 'express'\nexport const a = express"],
  ['electron/a/b/c.ts', "import { good } from '../../../shared/problem.ts'\nexport const a = good"],
  ['shared/gate/leaf.ts', "import { a } from '../../../elsewhere.ts'\nexport const b = a"],
]

test.each(badImports)('in %s the line %j is a fault', (path, text) => {
  const faults = faultsOf(path, text)
  expect(faults).toHaveLength(1)
  expect(faults[0]).toContain(path)
})

const goodImports: readonly (readonly [path: string, text: string])[] = [
  ['shared/gate/leaf.ts', "import * as v from 'valibot'\nexport const a = v"],
  [
    'db/jobs.ts',
    "import Sqlite from 'better-sqlite3'\nimport { good } from '../shared/problem.ts'\nexport const a = [Sqlite, good]",
  ],
  ['electron/paintPdf.ts', "import { PDFDocument } from 'pdf-lib'\nexport const a = PDFDocument"],
  ['electron/paint/text.ts', "import fontkit from '@pdf-lib/fontkit'\nexport const a = fontkit"],
  [
    'electron/preload.ts',
    "import { ipcRenderer } from 'electron'\nimport { carriedNames } from '../shared/requestNames.ts'\nexport const a = [ipcRenderer, carriedNames]",
  ],
  [
    'renderer/views/Job.vue',
    "<script setup lang=\"ts\">\nimport { ref } from 'vue'\nimport { good } from '../../shared/problem.ts'\n</script>",
  ],
  [
    'tests/db/jobs.test.ts',
    "import { openBook } from '../../db/open.ts'\nimport { expect } from 'vitest'\nexport const a = [openBook, expect]",
  ],
]

test.each(goodImports)('in %s the line %j is allowed', (path, text) => {
  expect(faultsOf(path, text)).toEqual([])
})

test.each([
  ['Date.now()', 'Date.now'],
  ['new Date()', 'new Date'],
  ['new Date(2026, 4, 31)', 'new Date'],
  ['Math.random() * 1310', 'Math.random'],
  ['process.env', 'process'],
  ['window.innerWidth', 'window'],
  ['document.title', 'document'],
  ["fetch('/request/jobs.list')", 'fetch'],
  ['globalThis.fetch', 'globalThis'],
  ['setTimeout(() => 1, 5)', 'setTimeout'],
  ['crypto.randomUUID()', 'crypto'],
])('shared may not say %s', (expression, named) => {
  const faults = faultsOf(
    'shared/gate/leaf.ts',
    `export const size = 1\nexport const a = () => ${expression}`,
  )
  expect(faults).toEqual([`shared/gate/leaf.ts:2: shared is pure and may not use ${named}`])
})

test('shared may use such words as names of its own, in comments and in texts', () => {
  const text = `
    /** Not Date.now(): the document is dated by whoever issues it. */
    export type Opening = { window: number; process: string }
    export const opening: Opening = { window: 900, process: 'fetch the document' }
    export const width = opening.window
    export const day = Date.parse('2026-05-31')
  `
  expect(faultsOf('shared/gate/leaf.ts', text)).toEqual([])
})

test('the same words are no fault outside shared', () => {
  expect(faultsOf('electron/log.ts', 'export const now = () => Date.now()')).toEqual([])
})

test('a file that only passes on what others export is a fault', () => {
  const text = "export { a } from './a.ts'\nexport * from './b.ts'"
  expect(faultsOf('shared/gate/all.ts', text)).toEqual(['shared/gate/all.ts: only passes on other files'])
})

test('a circle of imports is a fault, types and late imports included', () => {
  const files = [
    { path: 'shared/a.ts', text: "import { b } from './b.ts'\nexport const a = b" },
    { path: 'shared/b.ts', text: "import type { C } from './gate/c.ts'\nexport const b: C = 1" },
    { path: 'shared/gate/c.ts', text: "export type C = number\nexport const a = () => import('../a.ts')" },
    { path: 'shared/d.ts', text: "import { a } from './a.ts'\nexport const d = a" },
  ]
  expect(layerFaults(files)).toEqual([
    'a circle of imports: shared/a.ts → shared/b.ts → shared/gate/c.ts → shared/a.ts',
  ])
})

test('the project itself has files in every room and no fault', () => {
  const files = projectSources()
  const rooms = new Set(files.map(({ path }) => path.split('/')[0]))
  expect([...rooms].sort()).toEqual(['build', 'db', 'electron', 'renderer', 'shared', 'tests'])
  expect(layerFaults(files)).toEqual([])
})
