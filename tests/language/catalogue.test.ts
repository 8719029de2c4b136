import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { catalogueFile, catalogueNow, textsOf } from '../../build/language/extract.ts'
import { inProject } from '../../build/paths.ts'

const catalogue = catalogueNow()
const messages = Object.entries(JSON.parse(catalogue) as Record<string, string>)

/** Words that only somebody from computing would know, or would mean by them what is meant. */
const computing =
  /\b(databases?|schemas?|JSON|null|undefined|NaN|infinity|file ?paths?|paths?|parse[ds]?|parsers?|parsing|invalid|servers?|requests?|errors?|exceptions?|error codes?|integers?|strings?|booleans?|arrays?|objects?|bytes?|hash(es)?|SHA|SQL|SQLite|quer(y|ies)|payloads?|timeouts?|tokens?|API|URLs?|HTTP|localhost|cache[ds]?|config(uration)?|parameters?|arguments?|log ?in|login|user ?names?|users?|director(y|ies)|save[ds]?|saving|delete[ds]?|submit|click|upload(ed)?|download(ed)?|dialogs?|retry|sync(ed)?|debug|bugs?|crash(ed)?|defaults?|regex|backend|frontend|null value|stack trace|abort(ed)?)\b/i

/** What is told to a program that hands over a gate's file, or to whoever reads a folder taken out of the book: they know these words. */
const toldToPrograms = [
  /^shared\/gate\/(parseSpec|spec|specRules|specShape|specText)\.ts$/,
  /^electron\/openBook\/bookFiles\.ts$/,
]

describe('the catalogue of English messages', () => {
  it('is what the sources say now (npm run build writes it)', () => {
    expect(readFileSync(inProject(catalogueFile), 'utf8') === catalogue).toBe(true)
  })

  it('holds no word from computing', () => {
    const found = messages.flatMap(([message, files]) => {
      const word = computing.exec(message)?.[0]
      const told = files.split(', ').filter((file) => !toldToPrograms.some((silent) => silent.test(file)))
      return word === undefined || told.length === 0 ? [] : [`${word}: ${message} (${told.join(', ')})`]
    })
    expect(found).toEqual([])
  })

  it('has every apostrophe curly; a straight one is for feet, and for what was typed', () => {
    expect(
      messages.map(([message]) => message).filter((one) => /[\p{L}}]'\p{L}|\p{L}s' \p{Ll}/u.test(one)),
    ).toEqual([])
  })

  it('has every gap of a message in turn from 0, so that a translation can put them in another order', () => {
    const odd = messages.filter(([message]) => {
      const gaps = [...message.matchAll(/\{(\d+)\}/g)].map(([, gap]) => Number(gap))
      return gaps.some((gap, at) => gap !== at)
    })
    expect(odd).toEqual([])
  })
})

const screen = `<script setup lang="ts">
defineProps<{ count: number; name: string }>()
const kind = 'ledged-braced'
const stageWords = { making: 'making' }
const line = (left: number) => (kind === 'framed' ? '' : \`\${left} boards are left\`)
</script>
<template>
  <section class="sheet" aria-label="Cut list">
    <p>Rip {{ count }} of <b>these</b></p>
    <TextField label="Width" field="size.width" ghost="as 1830" />
    <p translate="no">A person’s own words</p>
    <button :title="open ? 'Close' : 'Show'" @click="emit('go')">{{ name }}, {{ line(2) }}</button>
    <span>{{ count }} mm</span>
  </section>
</template>`

describe('the messages of a screen', () => {
  it('are its words, its attributes that are read, and the sentences of its script; never keys, units or what a person wrote', () => {
    expect(textsOf('Screen.vue', screen)).toEqual([
      'Cut list',
      'Rip {0} of',
      'these',
      'Width',
      'as 1830',
      'Close',
      'Show',
      'making',
      '{0} boards are left',
    ])
  })

  it('join a chain of texts to one message', () => {
    expect(
      textsOf('words.ts', "export const said = (n: number) => 'Cut ' + n + ' boards, ' + 'then stop.'"),
    ).toEqual(['Cut {0} boards, then stop.'])
  })

  it('leave out what is compared, looked up by, asked for or thrown', () => {
    const source = `
      if (key === 'Escape key') request('Some name', { kind: 'Job card' })
      throw new RangeError('the book is upside down')
      const shown = words['Face side'] ?? document.querySelector('main form')`
    expect(textsOf('words.ts', source)).toEqual([])
  })
})
