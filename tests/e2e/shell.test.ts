import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from '@playwright/test'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { bundleIfStale } from '../../build/bundle.ts'
import { jobFileEnding } from '../../shared/jobFileEnding.ts'
import { entry, giveSizes, kept } from './onScreen.ts'
import { openShell, type ShellWindow } from './shellWindow.ts'

const folder = mkdtempSync(join(tmpdir(), 'bracework-window-'))
const scene: { shell?: ShellWindow } = {}
const shell = (): ShellWindow => {
  if (!scene.shell) throw new Error('the window is not open')
  return scene.shell
}
const page = (): Page => shell().page()
const hash = (): string => new URL(page().url()).hash

/** Starts a job by its form in the program's own window. */
async function startJob(name: string): Promise<void> {
  await page().getByRole('button', { name: 'Start a new job' }).first().click()
  await page().getByLabel('Customer', { exact: true }).fill(name)
  await page().getByRole('button', { name: 'Start the job' }).click()
  await entry(page(), 'size.width').waitFor()
}

beforeAll(async () => {
  await bundleIfStale()
  scene.shell = await openShell(folder, join(folder, 'workshop.book'), { STAND_IN_PRESSES: 'Open it again' })
})

afterAll(async () => {
  const seen = await scene.shell?.close()
  rmSync(folder, { recursive: true, force: true })
  if (!seen) return
  expect(seen.asked).toEqual(['This screen has stopped answering. What you entered is kept.'])
  expect(seen.shown).toBeGreaterThanOrEqual(2)
})

describe('the program’s own window', () => {
  it('opens on the sample book, with the bridge and without anything else of the machine', async () => {
    process.stdout.write(`the window was opened in ${shell().used}\n`)
    await page().getByRole('link', { name: 'Jobs', exact: true }).waitFor()
    await expect.poll(() => page().locator('a.line, [data-job], .row').count()).toBeGreaterThan(5)
    const names = await page().evaluate(() =>
      ['require', 'process', 'module', 'Buffer', 'global', 'ipcRenderer', 'electron'].filter(
        (name) => name in window,
      ),
    )
    expect(names).toEqual([])
    expect(await page().evaluate(() => typeof window.bracework?.['jobs.list'])).toBe('function')
  })

  it('takes a job in, draws it, and keeps what is typed', async () => {
    await startJob('Wilhelmina Mortice')
    await giveSizes(page(), '985', '1830')
    await kept(page())
    expect(await entry(page(), 'size.width').inputValue()).toBe('985')
  })

  it('shows a card as it will be printed', async () => {
    const draft = await page().evaluate(async () => {
      const rows = await window.bracework?.['jobs.list']({ search: 'Mortice', stage: null })
      const jobId = rows?.ok ? (rows.value.rows[0]?.id ?? 0) : 0
      const paper = await window.bracework?.['papers.draft']({ jobId, format: 'a4' })
      return paper?.ok ? atob(paper.value.base64).slice(0, 5) : JSON.stringify(paper)
    })
    expect(draft).toBe('%PDF-')
  })

  it('reaches no other address, from script, picture, frame, link or window', async () => {
    const attempts = await page().evaluate(async () => {
      const fetched = await fetch('https://example.org/').then(
        () => 'reached',
        () => 'refused',
      )
      const picture = new Image()
      const shown = new Promise<string>((done) => {
        picture.onload = () => done('reached')
        picture.onerror = () => done('refused')
      })
      picture.src = 'https://example.org/x.png'
      return [fetched, await shown]
    })
    expect(attempts).toEqual(['refused', 'refused'])
    const before = page().url()
    await page().evaluate(() => {
      const link = document.createElement('a')
      link.href = 'https://example.org/'
      document.body.append(link)
      link.click()
      link.remove()
    })
    await page().evaluate(() => void window.open('https://example.org/'))
    await expect.poll(() => page().context().pages().length).toBeLessThanOrEqual(2)
    expect(page().url()).toBe(before)
    expect(await entry(page(), 'size.width').inputValue()).toBe('985')
  })

  it('answers no frame inside its page, though it stands at our own address', async () => {
    if (!shell().say) return expect(shell().used).toMatch(/^Electron/)
    const frame = await page().evaluateHandle(async () => {
      const inner = document.createElement('iframe')
      inner.src = URL.createObjectURL(new Blob(['a paper'], { type: 'text/plain' }))
      document.body.append(inner)
      await new Promise((done) => (inner.onload = done))
      return inner
    })
    const inside = await frame.contentFrame()
    const answer = await inside?.evaluate(async () => {
      const reach = Reflect.get(window, 'standInCarry') as (name: string, payload: object) => Promise<unknown>
      return reach('jobs.list', { search: '', stage: null })
    })
    expect(answer).toMatchObject({ ok: false, problems: [{ code: 'refused' }] })
    expect(await inside?.evaluate(() => 'bracework' in window)).toBe(false)
    await frame.evaluate((inner) => inner.remove())
  })

  it('comes back in the same job when its screen dies mid-typing, nothing older than a second lost', async () => {
    const at = hash()
    expect(at).toMatch(/^#\/job\/\d+\/gate$/)
    await entry(page(), 'size.height').fill('1875')
    await page().waitForTimeout(900)
    await entry(page(), 'size.width').pressSequentially('5')
    const began = performance.now()
    await shell().die()
    const height = `document.querySelector('[data-field="size.height"]')?.value ?? ''`
    const standing = () =>
      shell()
        .look(height)
        .catch(() => 'not there yet')
    await expect.poll(standing, { timeout: 8000, interval: 50 }).toBe('1875')
    const took = performance.now() - began
    expect(await shell().look('location.hash')).toBe(at)
    process.stdout.write(`the screen was back in the same job after ${Math.round(took)} ms\n`)
    expect(took).toBeLessThan(5000)
  })

  it('comes back in the same job when its screen hangs and the person asks for it', async () => {
    const { say } = shell()
    if (!say) return expect(shell().used).toMatch(/^Electron/)
    const at = hash()
    const next = page().context().waitForEvent('page')
    await say('hang')
    const back = await next
    await back.waitForURL((url) => url.hash === at)
    await entry(back, 'size.width').waitFor()
    await say('second start')
  })

  it('is handed a job’s file by a second start, and gives it to the screen once', async () => {
    const { say } = shell()
    if (!say) return expect(shell().used).toMatch(/^Electron/)
    const path = join(folder, `one.${jobFileEnding}`)
    writeFileSync(path, 'a gate from elsewhere')
    const open = page().context().pages().at(-1)
    const ask = () => open?.evaluate(() => window.bracework?.['job.handed']({}))
    expect(await ask()).toEqual({ ok: true, value: null })
    await say(`second start --flag ${path}`)
    const value = { name: `one.${jobFileEnding}`, text: 'a gate from elsewhere' }
    await expect.poll(ask).toEqual({ ok: true, value })
    expect(await ask()).toEqual({ ok: true, value: null })
  })

  it('has no word of a customer in its log, and every line that nobody meant is there', () => {
    const log = readFileSync(join(folder, 'logs', 'bracework.log'), 'utf8')
    expect(log).toMatch(/the screen ended: crashed/)
    if (shell().say) {
      expect(log).toMatch(/the screen doesn’t answer/)
      expect(log.match(/refused jobs\.list: not from our window/g)).toHaveLength(1)
    }
    expect(log).not.toMatch(/Mortice|Wilhelmina|985|1875/)
  })
})
