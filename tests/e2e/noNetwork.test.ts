import { spawn, spawnSync, type ChildProcess } from 'node:child_process'
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it, test } from 'vitest'
import { bundleIfStale } from '../../build/bundle.ts'
import { startChromium } from '../../build/chromium.ts'
import { programNamed } from '../../build/machine.ts'
import { inProject, projectRoot } from '../../build/paths.ts'
import { entry, giveSizes, kept } from './onScreen.ts'
import { leavesMachine, readTrace, type SocketCall } from './sockets.ts'

const folder = mkdtempSync(join(tmpdir(), 'bracework-sockets-'))
const strace = programNamed('strace')

/** Timber for a small gate, to be bought from two lengths. */
const request = {
  version: 1,
  kerf: 3,
  endTrim: 20,
  leastOffcut: 450,
  parts: [{ section: 'board', length: 1830, quantity: 9 }],
  stock: [
    { section: 'board', length: 3600, pence: 910 },
    { section: 'board', length: 4200, pence: 1130 },
  ],
}

/** The program and all it starts, with every call about sockets written to a file. */
const traced = (name: string, args: string[]): { program: string; args: string[]; trace: string } => {
  const trace = join(folder, `${name}.trace`)
  // -D makes the program the child that is started, so that a signal reaches it, and the tracer its grandchild.
  const watch = ['-D', '-f', '-qq', '-e', 'trace=network', '-s', '200', '-o', trace]
  return { program: strace ?? 'strace', args: [...watch, process.execPath, '--no-warnings', ...args], trace }
}

const runTraced = (
  name: string,
  args: string[],
  env = {},
): { status: number | null; calls: SocketCall[] } => {
  const { program, args: whole, trace } = traced(name, args)
  const { status } = spawnSync(program, whole, {
    cwd: projectRoot,
    encoding: 'utf8',
    env: { ...process.env, ...env },
    timeout: 120_000,
  })
  spawnSync('sleep', ['0.2'])
  return { status, calls: readTrace(trace) }
}

const outward = (calls: readonly SocketCall[]): string[] =>
  calls.filter(leavesMachine).map(({ line }) => line)

beforeAll(async () => {
  await bundleIfStale()
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

test('the tracer is there, and sees a program that does reach out', () => {
  expect(strace, 'strace is missing: install it, this can’t be shown without').toBeDefined()
  const code = `require('node:dgram').createSocket('udp4').send('x', 9, '192.0.2.1', () => process.exit())`
  const { calls } = runTraced('outward', ['-e', code])
  expect(outward(calls).join('\n')).toContain('192.0.2.1')
  const wide = `require('node:net').createServer().listen(0, '0.0.0.0', () => process.exit())`
  expect(outward(runTraced('wide', ['-e', wide]).calls)).toHaveLength(1)
  const name = `require('node:dns').lookup('gates.example', () => process.exit())`
  expect(runTraced('name', ['-e', name]).calls.length).toBeGreaterThan(0)
})

const addressFrom = (child: ChildProcess): Promise<string> =>
  new Promise((done, fail) => {
    const said = { out: '' }
    child.stdout?.on('data', (chunk) => {
      said.out += String(chunk)
      const found = /http:\/\/127\.0\.0\.1:\d+\/open\/\S+/.exec(said.out)
      if (found) done(found[0])
    })
    child.once('exit', () => fail(new Error(`the host ended: ${said.out}`)))
  })

describe('the host, from the sample book to a printed card', () => {
  it('listens on 127.0.0.1 alone and reaches out to nobody', async () => {
    const script = inProject('electron/loopback/serve.ts')
    const { program, args, trace } = traced('host', [script, '--book', join(folder, 'a.book')])
    const child = spawn(program, args, { stdio: ['ignore', 'pipe', 'inherit'] })
    const ended = new Promise((done) => child.once('exit', done))
    const address = await addressFrom(child)
    const browser = await startChromium()
    const page = await browser.newPage({ viewport: { width: 1093, height: 614 } })
    const elsewhere: string[] = []
    page.on('request', (request) => {
      if (!/^(blob:)?http:\/\/127\.0\.0\.1:/.test(request.url())) elsewhere.push(request.url())
    })
    await page.goto(address)
    await page.getByRole('button', { name: 'Start a new job' }).first().click()
    await page.getByLabel('Customer', { exact: true }).fill('Ottoline Tenon')
    await page.getByRole('button', { name: 'Start the job' }).click()
    await giveSizes(page, '985', '1830')
    await kept(page)
    const job = new URL(page.url()).hash.replace('/gate', '')
    for (const place of [
      `${job}/price`,
      `${job}/price/options`,
      `${job}/papers`,
      `${job}/customer`,
      '#/prices',
      '#/prices/rises',
      '#/timber',
      '#/timber/make',
      '#/timber/rack',
      '#/workshop',
      '#/estimates',
    ])
      await page.goto(new URL(place, page.url()).href).then(() => page.waitForTimeout(100))
    const papers = await page.evaluate(async () => {
      const ask = async (name: string, payload: object) => {
        const headers = { 'content-type': 'application/json' }
        const sent = { method: 'POST', headers, body: JSON.stringify(payload) }
        return (await fetch(`/request/${name}`, sent)).json()
      }
      const { value } = await ask('jobs.list', { search: '', stage: 'making' })
      const made = []
      for (const { id } of value.rows) made.push((await ask('papers.draft', { jobId: id, format: 'a4' })).ok)
      return made
    })
    expect(papers.length).toBeGreaterThan(0)
    expect(new Set(papers)).toEqual(new Set([true]))
    expect(await entry(page, 'size.width').count()).toBe(0)
    await browser.close()
    child.kill('SIGTERM')
    expect(await ended).toBe(0)
    await new Promise((done) => setTimeout(done, 300))
    const calls = readTrace(trace)
    expect(outward(calls)).toEqual([])
    expect(elsewhere).toEqual([])
    const listens = calls.filter(({ call, line }) => call === 'bind' && /AF_INET/.test(line))
    expect(listens).toHaveLength(1)
    expect(listens[0]?.line).toContain('inet_addr("127.0.0.1")')
    expect(calls.filter(({ call, line }) => call === 'connect' && /AF_INET/.test(line))).toEqual([])
    process.stdout.write(
      `sockets: ${calls.length} ways in or out of the host, ${listens.length} of them by address, none outward\n`,
    )
  })
})

describe('the rest of the program', () => {
  it('in its window, the built main process reaches out to nobody', () => {
    const register = inProject('tests/electron/standIn/register.ts')
    const main = inProject('build/out/main/main.cjs')
    const env = { BRACEWORK_BOOK: join(folder, 'b.book'), STAND_IN_FOLDER: folder }
    const { status, calls } = runTraced('window', ['--import', register, main], env)
    expect(status).toBe(0)
    expect(existsSync(join(folder, 'b.book'))).toBe(true)
    expect(calls.filter(({ line }) => /AF_INET/.test(line))).toEqual([])
  })

  it.each([
    [
      'card',
      'electron/commands/card.ts',
      inProject('db/demo/specs/garden-gate.json'),
      ['--out', join(folder, 'papers')],
    ],
    ['buy', 'electron/commands/buy.ts', join(folder, 'request.json'), []],
  ])('as the command %s it opens no socket to anywhere', (name, script, given, more) => {
    writeFileSync(join(folder, 'request.json'), JSON.stringify(request))
    const { status, calls } = runTraced(name, [inProject(script), given, ...more])
    expect(status).toBe(0)
    expect(calls.filter(({ line }) => /AF_INET/.test(line))).toEqual([])
  })
})
