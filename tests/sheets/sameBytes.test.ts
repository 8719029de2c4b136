import { execFile } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { promisify } from 'node:util'
import { afterAll, describe, expect, it } from 'vitest'
import { longHeader } from '../fixtures/cards.ts'
import { wholeCards } from '../fixtures/wholeCards.ts'
import { orderInput } from '../papers/orderInputs.ts'
import { business, moneyOf, plainLines } from '../papers/quotationInputs.ts'
import type { PrintedSums, PrintRun } from './printHashes.ts'
import { everySo } from '../fixtures/sample.ts'

const folder = mkdtempSync(join(tmpdir(), 'bracework-bytes-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

const script = fileURLToPath(new URL('printHashes.ts', import.meta.url))

/** Every second in the usual run. Zones either side of the day line and off the full hour; tongues that write figures, capitals and dates their own way. */
const places = [
  { zone: 'Europe/London', lang: 'en_GB.UTF-8', locale: 'en-GB' },
  { zone: 'Pacific/Kiritimati', lang: 'ar_EG.UTF-8', locale: 'ar-EG' },
  { zone: 'America/Los_Angeles', lang: 'tr_TR.UTF-8', locale: 'tr-TR' },
  { zone: 'Australia/Adelaide', lang: 'de_DE.UTF-8', locale: 'de-DE' },
  { zone: 'Pacific/Pago_Pago', lang: 'ar_EG.UTF-8', locale: 'ar-EG' },
]

/** One gate's papers, everything in them that a calendar or a tongue could touch. */
async function run(): Promise<PrintRun> {
  const gate = wholeCards.find(({ name }) => name.startsWith('20'))?.input
  if (!gate) throw new Error('no gate')
  const header = {
    ...longHeader,
    due: '2026-12-31',
    issuedAt: '2026-12-31T23:30:00.000Z',
    issuedOn: '2027-01-01',
  }
  const { spec, design } = gate
  const { number, title, customer } = header
  return {
    card: { ...gate, header, handover: { business, finish: { name: 'clear oil', coats: 2 } } },
    quotation: {
      header,
      business,
      money: moneyOf([{ spec, lines: plainLines }]),
      unit: 'in',
      format: 'letter',
      draft: false,
    },
    order: await orderInput(2),
    day: {
      ...{ workshop: header.workshop, day: '2026-12-31', unit: 'mm', format: 'a4' },
      jobs: [{ number, title, customer: customer.name, spec, design }],
    },
  }
}

/** A busy machine starts a program slowly, five times over. */
const patient = 4 * 60_000

describe('the bytes of a paper', () => {
  it(
    'are the same whatever the time zone and the tongue, and printed twice',
    async () => {
      const file = join(folder, 'run.json')
      writeFileSync(file, JSON.stringify(await run()))
      const printed: PrintedSums[] = []
      for (const { zone, lang, locale } of everySo(2, places)) {
        const env = { ...process.env, TZ: zone, LANG: lang, LC_ALL: lang, LANGUAGE: '' }
        const { stdout } = await promisify(execFile)(process.execPath, ['--no-warnings', script, file], {
          env,
        })
        const sums = JSON.parse(stdout) as PrintedSums
        expect([sums.zone, sums.locale]).toEqual([zone, locale])
        printed.push(sums)
      }
      const [first] = printed
      expect(Object.keys(first?.sums ?? {})).toHaveLength(8)
      for (const { zone, sums } of printed)
        for (const [name, [once, again]] of Object.entries(sums)) {
          expect([zone, name, again]).toEqual([zone, name, once])
          expect([zone, name, once]).toEqual([zone, name, first?.sums[name]?.[0]])
        }
    },
    patient,
  )
})
