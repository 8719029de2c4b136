import { spawn, type ChildProcess } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { createServer } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, afterEach, expect, test } from 'vitest'
import { inProject } from '../../build/paths.ts'
import { readFlags } from '../../electron/loopback/flags.ts'
import { usualPort } from '../../electron/loopback/usualPort.ts'
import { call, enter, ownHeaders } from './caller.ts'

const folder = mkdtempSync(join(tmpdir(), 'bracework-serve-'))
const started: ChildProcess[] = []

afterEach(() => {
  for (const child of started.splice(0)) child.kill('SIGKILL')
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

type Ended = { code: number | null; out: string; err: string }

const start = (
  ...args: string[]
): { child: ChildProcess; address: Promise<string>; ended: Promise<Ended> } => {
  const child = spawn(process.execPath, [inProject('electron/loopback/serve.ts'), ...args], {
    env: { ...process.env, BRACEWORK_BOOK: join(folder, 'usual.book') },
  })
  started.push(child)
  const said = { out: '', err: '' }
  const ended = new Promise<Ended>((done) => child.once('exit', (code) => done({ code, ...said })))
  child.stderr?.on('data', (chunk) => void (said.err += String(chunk)))
  const address = new Promise<string>((done, fail) => {
    child.stdout?.on('data', (chunk) => {
      said.out += String(chunk)
      const found = /http:\/\/127\.0\.0\.1:\d+\/open\/\S+/.exec(said.out)
      if (found) done(found[0])
    })
    void ended.then(({ err }) => fail(new Error(`the host ended: ${err}`)))
  })
  address.catch(() => undefined)
  return { child, address, ended }
}

const ask = async (address: string, name: string, payload: unknown) => {
  const port = Number(new URL(address).port)
  const cookie = await enter(port, address)
  const reply = await call({
    port,
    path: `/request/${name}`,
    method: 'POST',
    headers: ownHeaders(port, cookie),
    body: JSON.stringify(payload),
  })
  return JSON.parse(reply.body)
}

const newJob = { customerName: 'Ångström', town: 'Ford', phone: '', title: 'Yard door', due: null }

test('a job taken in on one run is there on the next, and a first start has the sample jobs', async () => {
  const book = join(folder, 'kept.book')
  const first = start('--book', book)
  const created = await ask(await first.address, 'jobs.create', newJob)
  expect(created).toMatchObject({ ok: true, value: { title: 'Yard door' } })
  first.child.kill('SIGTERM')
  expect((await first.ended).code).toBe(0)
  const second = start('--book', book)
  const rows = await ask(await second.address, 'jobs.list', { search: 'angstrom', stage: null })
  expect(rows.value.rows.map(({ id }: { id: number }) => id)).toEqual([created.value.id])
  const third = await ask(await start('--book', join(folder, 'other.book')).address, 'book.summary', {})
  expect(third.value.sampleJobs).toBeGreaterThanOrEqual(12)
})

test('a job is kept even when the host is killed the moment it has answered', async () => {
  const book = join(folder, 'killed.book')
  const first = start('--book', book, '--empty')
  expect((await ask(await first.address, 'jobs.create', newJob)).ok).toBe(true)
  first.child.kill('SIGKILL')
  await first.ended
  const summary = await ask(await start('--book', book).address, 'book.summary', {})
  expect([summary.value.jobs, summary.value.sampleJobs]).toEqual([1, 0])
})

test('a second host on the same book is refused in a sentence, and the first goes on', async () => {
  const book = join(folder, 'one.book')
  const first = start('--book', book, '--empty', '--fixed-key', 'again')
  const address = await first.address
  const second = await start('--book', book).ended
  expect(second.code).toBe(1)
  expect(second.out).toBe('')
  expect(second.err).toBe(
    `Bracework is already open with the job book “one” in ${folder}. Go on in that window, or close it first.\n`,
  )
  expect((await ask(address, 'book.summary', {})).ok).toBe(true)
})

test('without --book the book named by BRACEWORK_BOOK is opened', async () => {
  const address = await start('--empty').address
  expect((await ask(address, 'book.summary', {})).value).toMatchObject({ jobs: 0, folder })
})

test('a book keeps its port from run to run, and takes another where that one is taken', async () => {
  const book = join(folder, 'port.book')
  const usual = usualPort(book)
  expect(usual).toBeGreaterThanOrEqual(20000)
  expect(usual).toBeLessThan(30000)
  for (let run = 0; run < 2; run += 1) {
    const { child, address, ended } = start('--book', book, '--empty')
    expect(Number(new URL(await address).port)).toBe(usual)
    child.kill('SIGTERM')
    await ended
  }
  const squatter = createServer().listen(usual, '127.0.0.1')
  const other = Number(new URL(await start('--book', book).address).port)
  squatter.close()
  expect(other).not.toBe(usual)
})

test('a damaged book is no reason not to serve: every request says why, and what can be done is offered', async () => {
  const book = join(folder, 'empty.book')
  writeFileSync(book, '')
  const address = await start('--book', book, '--fixed-key', 'again').address
  const { trouble } = (await ask(address, 'keeping.state', {})).value
  expect(trouble).toMatchObject({ code: 'damaged', ways: ['salvage', 'fresh', 'again'] })
  expect(await ask(address, 'book.summary', {})).toMatchObject({
    ok: false,
    problems: [{ message: trouble.message }],
  })
  expect(readFileSync(book)).toHaveLength(0)
  expect((await ask(address, 'keeping.fresh', {})).value.trouble).toBeNull()
  expect((await ask(address, 'book.summary', {})).value.jobs).toBe(0)
})

/** Says for a page that it lies open, and gives what came back. */
const stillOpen = (port: number, cookie: string, headers = {}) =>
  call({
    port,
    path: '/still-open',
    method: 'POST',
    headers: { ...ownHeaders(port, cookie), ...headers },
    body: '{}',
  })

test('a book that no page looks at is closed and said so; one whose page says it is open is not', async () => {
  const book = join(folder, 'idle.book')
  const { address, ended, child } = start('--book', book, '--empty', '--idle', '0.03', '--fixed-key', 'again')
  const port = Number(new URL(await address).port)
  const cookie = await enter(port, await address)
  for (let time = 0; time < 14; time += 1) {
    await new Promise((done) => setTimeout(done, 250))
    expect((await stillOpen(port, cookie)).status).toBe(200)
    expect((await stillOpen(port, 'theme=dark')).status).toBe(403)
    expect((await stillOpen(port, cookie, { origin: 'https://example.org' })).status).toBe(403)
  }
  expect(child.exitCode).toBeNull()
  const asStranger = setInterval(() => void stillOpen(port, 'theme=dark').catch(() => undefined), 300)
  const { code, out } = await ended
  clearInterval(asStranger)
  expect(code).toBe(0)
  expect(out).toContain('No page of the book has been open for 0.03 minutes, so it was closed.')
  expect((await ask(await start('--book', book).address, 'book.summary', {})).ok).toBe(true)
})

test('a host told never to close for want of a page goes on', async () => {
  const { address, child } = start('--book', join(folder, 'never.book'), '--empty', '--idle', '0')
  await address
  await new Promise((done) => setTimeout(done, 600))
  expect(child.exitCode).toBeNull()
})

test('a wrong flag is refused in a sentence, without a page of code', async () => {
  for (const flags of [['--port', 'x'], ['--host', '0.0.0.0'], ['--idle=-2']]) {
    const { code, err, out } = await start(...flags).ended
    expect([code, out]).toEqual([2, ''])
    expect(err.trim().split('\n').length).toBeLessThanOrEqual(2)
    expect(err).not.toMatch(/\bat .*:\d+:\d+/)
  }
})

test('the flags are read, and a wrong one is refused', () => {
  expect(readFlags(['--book', 'a.book', '--port', '4701', '--open'])).toEqual({
    book: 'a.book',
    port: 4701,
    open: true,
    empty: false,
    idle: 30,
    fixedKey: undefined,
  })
  expect(readFlags([])).toMatchObject({ book: undefined, port: 0, open: false })
  expect(() => readFlags(['--port', '65536'])).toThrow('--port takes 0 to 65535')
  expect(() => readFlags(['--port', 'x'])).toThrow('--port takes 0 to 65535')
  expect(readFlags(['--idle', '0.5']).idle).toBe(0.5)
  for (const idle of ['', '-1', 'long', '10001'])
    expect(() => readFlags([`--idle=${idle}`])).toThrow('--idle takes minutes from 0 to 10000')
  expect(() => readFlags(['--host', '0.0.0.0'])).toThrow()
})
