import { mkdirSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { writeFiles } from '../../electron/commands/writeFiles.ts'
import { temporaryFolder } from '../db/temporaryBook.ts'

test('papers written into a folder are whole or not there when one of them can’t be written', async () => {
  const folder = temporaryFolder()
  mkdirSync(join(folder, 'care-note.pdf', 'in the way'), { recursive: true })
  const bytes = new Uint8Array([37, 80, 68, 70])
  const names = ['job-card.pdf', 'care-note.pdf', 'part-labels.pdf']
  const written = await writeFiles(
    folder,
    names.map((name) => ({ name, bytes })),
  )
  expect(written).toMatchObject({ ok: false, problems: [{ code: 'unwritable' }] })
  expect(written.ok ? '' : written.problems[0]?.message).toContain(folder)
  expect(readdirSync(folder).sort()).toEqual(['care-note.pdf', 'job-card.pdf'])
  expect([...readFileSync(join(folder, 'job-card.pdf'))]).toEqual([...bytes])
})
