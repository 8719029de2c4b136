import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { beforeAll, expect, test } from 'vitest'
import { bundleIfStale } from '../../build/bundle.ts'
import { fontFiles } from '../../build/copyAssets.ts'
import { bundleIsStale } from '../../build/newest.ts'
import { inProject } from '../../build/paths.ts'
import { gateSpecSchema } from '../../build/publishSchema.ts'

const built = (path: string): string => readFileSync(inProject(`build/out/${path}`), 'utf8')

const assets = (ending: string): { name: string; text: string }[] =>
  readdirSync(inProject('build/out/renderer/assets'))
    .filter((name) => name.endsWith(ending))
    .map((name) => ({ name, text: built(join('renderer/assets', name)) }))

beforeAll(async () => {
  await bundleIfStale()
})

test('once built, nothing is stale', async () => {
  expect(bundleIsStale()).toBe(false)
  expect(await bundleIfStale()).toBe(false)
})

test('the page has no inline script or style, and names its files from where it stands', () => {
  const page = built('renderer/index.html')
  const tags = [...page.matchAll(/<script\b([^>]*)>([\s\S]*?)<\/script>/g)]
  expect(tags.length).toBeGreaterThan(0)
  for (const [, attributes = '', inside = ''] of tags) {
    expect(attributes).toContain(' src="./')
    expect(inside.trim()).toBe('')
  }
  expect(page).not.toMatch(/<style|\sstyle="|\son\w+="/)
  for (const [, address = ''] of page.matchAll(/(?:src|href)="([^"]*)"/g)) expect(address).toMatch(/^\.\//)
})

test('the screens’ script makes no code from text, reaches for no Node and names no other host', () => {
  const scripts = assets('.js')
  expect(scripts.length).toBeGreaterThan(0)
  for (const { name, text } of scripts) {
    expect(text, name).not.toMatch(/\bnew Function\(|\beval\(|\brequire\("/)
    expect(text, name).not.toMatch(/from"node:|better-sqlite3/)
    const hosts = [...text.matchAll(/https?:\/\/([a-z0-9.-]+)/g)].map(([, host]) => host)
    const known = /(^|\.)(w3\.org|vuejs\.org|reka-ui\.com|github\.com)$/
    // The reader of papers knows the names of other forms' languages, and reads addresses beside an invented one; none is ever asked.
    const named = /^(pdf|pageWorker)-/.test(name)
      ? /^(www\.xfa\.org|ns\.adobe\.com|example\.com|foo\.bar)$/
      : /^$/
    expect(hosts.filter((host = '') => !known.test(host) && !named.test(host))).toEqual([])
  }
})

test('the reader of papers is not read until a paper is looked at', () => {
  const page = built('renderer/index.html')
  const scripts = assets('.js')
  const first = scripts.filter(({ name }) => page.includes(name))
  expect(first.length).toBeGreaterThan(0)
  for (const { text } of first) expect(text).not.toContain('GlobalWorkerOptions')
  expect(scripts.some(({ text }) => text.includes('GlobalWorkerOptions'))).toBe(true)
})

test('the screens’ fonts are files of their own, never inside the style sheet', () => {
  for (const { name, text } of assets('.css')) expect(text, name).not.toContain('url(data:')
  expect(
    readdirSync(inProject('build/out/renderer/assets')).filter((name) => name.endsWith('.ttf')).length,
  ).toBeGreaterThan(0)
})

test('the papers’ fonts come with their licences, the book’s steps as they stand in the source', () => {
  const fonts = readdirSync(inProject('build/out/fonts'))
  for (const file of fontFiles) expect(fonts).toContain(file.split('/').at(-1))
  expect(built('fonts/IBMPlexSans-LICENSE.txt')).toContain('SIL OPEN FONT LICENSE')
  expect(built('fonts/DejaVuSans-LICENSE.txt')).toContain('Bitstream Vera')
  const steps = readdirSync(inProject('db/migrations'))
  expect(readdirSync(inProject('build/out/migrations'))).toEqual(steps)
  for (const step of steps) {
    expect(built(`migrations/${step}`)).toBe(readFileSync(inProject(`db/migrations/${step}`), 'utf8'))
  }
})

test('the PDF painter is not read until a card is painted', () => {
  expect(built('main/main.cjs')).not.toContain('PDFDocument')
  const late = readdirSync(inProject('build/out/main')).filter(
    (name) => !['main.cjs', 'preload.cjs'].includes(name),
  )
  expect(late.some((name) => built(`main/${name}`).includes('PDFDocument'))).toBe(true)
})

test('the published schema of a gate’s file is the one that checks it', () => {
  expect(existsSync(inProject('build/out/gateSpec.schema.json'))).toBe(true)
  const schema = JSON.parse(built('gateSpec.schema.json'))
  expect(schema).toEqual(JSON.parse(JSON.stringify(gateSpecSchema())))
  expect(schema.additionalProperties).toBe(false)
  expect([...schema.required].sort()).toEqual(
    [
      'boards',
      'construction',
      'fixings',
      'hung',
      'ironmongery',
      'leaves',
      'ledges',
      'size',
      'top',
      'version',
    ].sort(),
  )
  expect(schema.properties.boards.properties.section.properties.thickness).toEqual({
    type: 'number',
    exclusiveMinimum: 0,
    maximum: 500,
    description: 'a length in mm over 0 and up to 500',
  })
})
