import { readFileSync, readdirSync } from 'node:fs'
import { join } from 'node:path'
import { gzipSync } from 'node:zlib'
import { beforeAll, describe, expect, it } from 'vitest'
import { bundleIfStale } from '../../build/bundle.ts'
import { inProject } from '../../build/paths.ts'

const renderer = inProject('build/out/renderer')
const read = (file: string): string => readFileSync(join(renderer, file), 'utf8')
const weight = (files: Iterable<string>): number =>
  [...files].reduce((sum, file) => sum + gzipSync(readFileSync(join(renderer, file))).length, 0)

/** Every script that has to be here before the job book shows: what the page names, and what those name at their heads. */
function firstScripts(): Set<string> {
  const found = new Set<string>()
  const follow = (file: string): void => {
    if (found.has(file)) return
    found.add(file)
    for (const [, name] of read(file).matchAll(/(?:\bfrom|\bimport)\s*["'`]\.\/([\w.-]+\.js)["'`]/g))
      follow(`assets/${name}`)
  }
  for (const [, name = ''] of read('index.html').matchAll(/(?:src|href)="\.\/([\w./-]+\.js)"/g)) follow(name)
  return found
}

describe('what the job book waits for', () => {
  beforeAll(bundleIfStale)

  it('is at most 150 KB of script, compressed', () => {
    const first = firstScripts()
    expect(first.size).toBeGreaterThan(1)
    expect(weight(first)).toBeLessThan(150 * 1024)
  })

  it('holds none of what other screens work with, and each of those is fetched late', () => {
    const first = firstScripts()
    const late = readdirSync(join(renderer, 'assets'))
      .filter((name) => name.endsWith('.js') && !first.has(`assets/${name}`))
      .map((name) => read(`assets/${name}`))
    const text = [...first].map(read).join('')
    expect(text).toContain('Start a new job')
    for (const words of ['EN 1995-1-1', 'ripped board', 'Layers apart', 'Sections kept', 'The rack']) {
      expect(text, words).not.toContain(words)
      expect(
        late.some((one) => one.includes(words)),
        words,
      ).toBe(true)
    }
  })
})
