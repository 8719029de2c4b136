import { readFileSync } from 'node:fs'
import type { Page } from '@playwright/test'
import { inProject } from '../paths.ts'

const optional = [
  'opens',
  'openTo',
  'survey',
  'foot',
  'stable',
  'meeting',
  'braces',
  'frame',
  'timbers',
  'climate',
  'site',
  'workshop',
]

/** One of the example gates by its file name without the ending: '24-framed-pair-bowed-heaviest'. */
export const exampleSpec = (name: string): Record<string, unknown> =>
  JSON.parse(readFileSync(inProject(`tests/fixtures/whole/${name}.json`), 'utf8')) as Record<string, unknown>

/** Puts a whole spec into the job on the page, in one set of changes sent to the book, and shows it. */
export async function openSpec(page: Page, spec: Record<string, unknown>): Promise<void> {
  const id = Number(/job\/(\d+)/.exec(page.url())?.[1])
  const absent = optional.filter((key) => !(key in spec)).map((key) => [key, null] as const)
  const changes = [...Object.entries(spec), ...absent]
    .filter(([key]) => key !== 'version')
    .map(([key, value]) => ({ path: `spec.${key}`, value }))
  const refused = await page.evaluate(
    async (request) => {
      const reply = await fetch('/request/jobs.change', {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify(request),
      })
      const answer: { ok: boolean } = await reply.json()
      return answer.ok ? '' : JSON.stringify(answer)
    },
    { id, changes },
  )
  if (refused) throw new Error(`the spec isn't taken in: ${refused}`)
  await page.reload()
}
