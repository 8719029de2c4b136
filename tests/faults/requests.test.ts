import { copyFileSync } from 'node:fs'
import { join } from 'node:path'
import Sqlite from 'better-sqlite3'
import { describe, expect, it } from 'vitest'
import { openBook } from '../../db/open.ts'
import { answer } from '../../electron/handlers/answer.ts'
import { parseRequest, requestNames, type RequestName } from '../../shared/contract.ts'
import type { Result } from '../../shared/problem.ts'
import { temporaryFolder, tickingClock } from '../db/temporaryBook.ts'
import { opened } from '../handlers/opened.ts'
import { rightPayloads, type RightPayloads } from './rightPayloads.ts'
import { seeded } from './seeded.ts'
import { spoilt } from './spoilt.ts'

const soak = process.env['BRACEWORK_SOAK'] === '1'
/** Spoilt payloads for each request. */
const each = soak ? 240 : 8

/** The longest that a payload may hold the program up, ms: generous, as other work goes on beside the tests. */
const longest = 4000

/** A refusal as the window takes it: a code, a field and a sentence each, none of them the program's own trouble. */
function refusalFaults(result: Result<unknown>): string[] {
  if (result.ok) return []
  if (result.problems.length === 0) return ['refused without a word']
  return result.problems.flatMap(({ code, field, message }) => {
    if (typeof code !== 'string' || typeof field !== 'string' || typeof message !== 'string')
      return ['no problem at all']
    if (code === 'unexpected' || code === 'damaged') return [`${code}: ${message}`]
    if (message === '' || message.length > 2000 || field.length > 2000)
      return [`${code} at length: ${message.length}`]
    return /\bat .*\.(ts|js|cjs):\d+/.test(message) ? [`a stack in ${message}`] : []
  })
}

/** A book with one of everything in one file, and what each request takes on it. */
async function preparedBook(): Promise<{ right: RightPayloads; prepared: string }> {
  const context = opened()
  const right = await rightPayloads(context)
  const prepared = join(temporaryFolder(), 'prepared.book')
  const copying = new Sqlite(context.book.path)
  copying.prepare('VACUUM INTO ?').run(prepared)
  copying.close()
  return { right, prepared }
}

/** Requests that this book can't answer: it has no keeper of copies, nothing was looked into before and no paper lies ready to print. */
const wantsMore = (name: RequestName): boolean =>
  name.startsWith('keeping.') ||
  ['book.bringIn', 'papers.part', 'papers.print', 'papers.gather', 'papers.issueTogether'].includes(name)

type Tally = { payloads: number; refused: number; taken: number; wrong: string[] }

/** A book of its own for one request, and a second reader who sees whether anything was written. */
function bookFor(prepared: string, name: string) {
  const path = join(temporaryFolder(), 'jobs.book')
  copyFileSync(prepared, path)
  const book = openBook(path, { now: tickingClock('2026-03-02T13:00:00.000Z'), deeds: true })
  const watcher = new Sqlite(path, { readonly: true })
  const close = (): void => {
    watcher.close()
    book.close()
  }
  const context = opened({
    ...{ book, now: tickingClock('2026-03-02T13:00:00.000Z') },
    chooseFolder: async () => temporaryFolder(),
  })
  return { name, context, written: () => watcher.pragma('data_version', { simple: true }), close }
}

async function tryOne<N extends RequestName>(
  { context, written }: ReturnType<typeof bookFor>,
  name: N,
  payload: unknown,
): Promise<{ result: Result<unknown>; wrong: string[] }> {
  const read = parseRequest(name, payload)
  const before = written()
  const began = performance.now()
  const result = await answer(context, name, payload)
  const took = performance.now() - began
  const wrong = [...refusalFaults(read), ...refusalFaults(result)]
  if (!read.ok && result.ok) wrong.push('taken though its shape is wrong')
  if (!result.ok && written() !== before) wrong.push('refused, and yet something was written')
  if (took > longest) wrong.push(`took ${Math.round(took)} ms`)
  if (context.logged.length > 0) wrong.push(`logged: ${context.logged.splice(0).join(' ').slice(0, 600)}`)
  return { result, wrong }
}

const inWords = (payload: unknown): string => {
  try {
    return JSON.stringify(payload)?.slice(0, 300) ?? 'nothing'
  } catch (error) {
    return `(can’t be written down: ${String(error)})`
  }
}

async function tryRequest<N extends RequestName>(
  name: N,
  prepared: string,
  right: RightPayloads,
  tally: Tally,
) {
  const rig = bookFor(prepared, name)
  const chance = seeded(8100 + requestNames.indexOf(name))
  for (let turn = 0; turn < each; turn += 1) {
    const payload = spoilt(right[name], chance)
    const { result, wrong } = await tryOne(rig, name, payload)
    tally.payloads += 1
    tally[result.ok ? 'taken' : 'refused'] += 1
    tally.wrong.push(...wrong.map((what) => `${name} ${turn}: ${what} for ${inWords(payload)}`))
  }
  rig.close()
}

describe('requests that nobody’s window would send', () => {
  it(`are refused by name and field, and write nothing (${each} for each of ${requestNames.length} requests)`, async () => {
    const { right, prepared } = await preparedBook()
    const tally: Tally = { payloads: 0, refused: 0, taken: 0, wrong: [] }
    for (const name of requestNames) await tryRequest(name, prepared, right, tally)
    const { payloads, refused, taken, wrong } = tally
    process.stdout.write(
      `requests: ${payloads} payloads over ${requestNames.length} requests: ${refused} refused, ${taken} still right and taken, ${wrong.length} wrong\n`,
    )
    expect(wrong).toEqual([])
    expect(refused).toBeGreaterThan(payloads / 2)
    expect(Object.keys(Object.prototype)).toEqual([])
    expect('polluted' in {}).toBe(false)
  })

  it('are refused with U+0000 in any of their texts, by its field', async () => {
    const { right, prepared } = await preparedBook()
    let tried = 0
    for (const name of requestNames) {
      const rig = bookFor(prepared, name)
      const texts = Object.entries(right[name]).filter(([, value]) => typeof value === 'string')
      for (const [field] of texts)
        for (const text of ['\0', 'a\0b']) {
          const { result, wrong } = await tryOne(rig, name, { ...right[name], [field]: text })
          expect({ name, wrong, result }).toMatchObject({ name, wrong: [], result: { ok: false } })
          if (!result.ok) expect(result.problems[0]?.field).toBe(field)
          tried += 1
        }
      rig.close()
    }
    expect(tried).toBeGreaterThan(100)
  })

  it('begin as payloads that each request takes, or whose shape it takes where this book can’t do what is asked', async () => {
    const { right, prepared } = await preparedBook()
    for (const name of requestNames) {
      const rig = bookFor(prepared, name)
      expect({ name, ...parseRequest(name, right[name]) }).toMatchObject({ name, ok: true })
      const result = await answer(rig.context, name, right[name])
      expect({ name, ok: result.ok }).toEqual({ name, ok: !wantsMore(name) })
      expect(refusalFaults(result)).toEqual([])
      rig.close()
    }
  })
})
