import { spawnSync } from 'node:child_process'
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { bundleIfStale } from '../../build/bundle.ts'
import { inProject } from '../../build/paths.ts'
import { contentPolicy } from '../../electron/securityHeaders.ts'
import { holdBook } from '../../electron/bookLock.ts'
import { requestNames } from '../../shared/contract.ts'

const folder = mkdtempSync(join(tmpdir(), 'bracework-shell-'))

const runMain = (book: string, env = {}) => {
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    ['--import', inProject('tests/electron/standIn/register.ts'), inProject('build/out/main/main.cjs')],
    {
      env: { ...process.env, BRACEWORK_BOOK: join(folder, book), STAND_IN_FOLDER: folder, ...env },
      encoding: 'utf8',
      timeout: 60_000,
    },
  )
  return { status, stderr, said: stdout === '' ? {} : JSON.parse(stdout) }
}

const whole: { run?: ReturnType<typeof runMain> } = {}
const run = (): ReturnType<typeof runMain> => {
  whole.run ??= runMain('whole.book')
  return whole.run
}

beforeAll(async () => {
  await bundleIfStale()
})

afterAll(() => rmSync(folder, { recursive: true, force: true }))

test('the built program starts, makes the sample book, shows its page and ends without an error', () => {
  const { status, stderr, said } = run()
  expect(stderr.trim().split('\n')).toEqual([
    expect.stringMatching(/ refused jobs\.list: not from our window$/),
  ])
  expect(readFileSync(join(folder, 'logs', 'bracework.log'), 'utf8')).toContain('refused jobs.list')
  expect(status).toBe(0)
  expect(said.report.summary.ok).toBe(true)
  expect(said.report.summary.value.sampleJobs).toBeGreaterThanOrEqual(12)
  expect(existsSync(join(folder, 'whole.book'))).toBe(true)
})

test('the page and every file it names come over the app protocol under the content policy', () => {
  const { files } = run().said.report
  expect(files.length).toBeGreaterThanOrEqual(3)
  for (const file of files)
    expect([file.url, file.status, file.policy]).toEqual([file.url, 200, contentPolicy])
  expect(files.map(({ type }: { type: string }) => type.split(';')[0])).toEqual(
    expect.arrayContaining(['text/html', 'text/javascript', 'text/css']),
  )
  expect(run().said.report.outside).toEqual([404, 404, 403])
})

test('the built preload gives the page one name with one function a request', () => {
  const { worldNames, bridgeNames } = run().said.report
  expect(worldNames).toEqual(['bracework'])
  expect(bridgeNames).toEqual(requestNames)
  expect(run().said.seen.handled).toEqual(requestNames)
})

test('a job made through the built bridge is found again, and a bad request comes back as problems', () => {
  const { created, found, badRequest } = run().said.report
  expect(created).toMatchObject({ ok: true, value: { title: 'Side gate 1310 high', due: '2027-03-14' } })
  expect(found.value.rows.map(({ id }: { id: number }) => id)).toEqual([created.value.id])
  expect(badRequest).toMatchObject({ ok: false, problems: [{ field: 'id' }] })
})

test('the built program paints a card, with the fonts that were built beside it', () => {
  expect(run().said.report.draft).toBe('%PDF-')
})

test('the built program makes a checked copy of the book, in the thread that was built beside it', () => {
  const { copied } = run().said.report
  expect(copied).toMatchObject({ ok: true, value: { why: 'asked' } })
  expect(existsSync(join(folder, 'whole-copies', copied.value.name))).toBe(true)
  expect(existsSync(inProject('build/out/main/keepingWorker.cjs'))).toBe(true)
})

test('a call from another page is refused by the built program', () => {
  expect(run().said.report.stranger).toMatchObject({ ok: false, problems: [{ code: 'refused' }] })
})

test('the built program is sandboxed, with its own preload and a menu', () => {
  const { seen } = run().said
  expect(seen.sandboxed).toBe(true)
  expect(seen.options.webPreferences).toMatchObject({
    sandbox: true,
    contextIsolation: true,
    nodeIntegration: false,
  })
  expect(seen.options.webPreferences.preload).toBe(inProject('build/out/main/preload.cjs'))
  expect(seen.menu.length).toBeGreaterThan(0)
})

test('a book that is damaged is no reason not to open the window: its requests say why in a sentence', () => {
  writeFileSync(join(folder, 'empty.book'), '')
  const { status, said } = runMain('empty.book')
  expect(status).toBe(0)
  expect(said.seen.errors).toEqual([])
  expect(said.report.summary).toMatchObject({ ok: false, problems: [{ code: 'damaged' }] })
  expect(said.report.summary.problems[0].message).toMatch(/^The job book .*\.$/)
  expect(readFileSync(join(folder, 'empty.book'))).toHaveLength(0)
})

test('a book that is open elsewhere is not opened twice', async () => {
  const lock = await holdBook(join(folder, 'held.book'))
  const { status, said } = runMain('held.book')
  await lock?.release()
  expect(status).toBe(1)
  expect(said.seen.errors).toEqual([
    `Bracework is already open with the job book “held” in ${folder}. Go on in that window, or close it first.`,
  ])
  expect(existsSync(join(folder, 'held.book'))).toBe(false)
})

test('a second start hands over to the first window and opens no book', () => {
  const { status, said } = runMain('second.book', { STAND_IN_SECOND: '1' })
  expect([status, said]).toEqual([0, {}])
  expect(existsSync(join(folder, 'second.book'))).toBe(false)
})

test('the built preload carries names and no parsers', () => {
  const preload = readFileSync(inProject('build/out/main/preload.cjs'), 'utf8')
  expect(preload.length).toBeLessThan(4000)
  for (const name of requestNames) expect(preload).toContain(`"${name}"`)
})

test('the built program requires nothing but Node’s own, Electron and the store', () => {
  const names = ['main.cjs', 'preload.cjs'].flatMap((name) =>
    [
      ...readFileSync(inProject(`build/out/main/${name}`), 'utf8').matchAll(/\brequire\("([^".][^"]*)"\)/g),
    ].map(([, required = '']) => required),
  )
  const { builtinModules } = createRequire(import.meta.url)('node:module')
  const own = new Set(builtinModules)
  const foreign = names.filter((name) => !own.has(name.replace(/^node:/, '')))
  expect([...new Set(foreign)].sort()).toEqual(['better-sqlite3', 'electron'])
})
