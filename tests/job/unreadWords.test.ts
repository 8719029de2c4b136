import { describe, expect, it } from 'vitest'
import { standardDraft } from '../../shared/gate/standardSpec.ts'
import { unreadWords } from '../../shared/job/unreadWords.ts'

const entry = (width: number | null, words: string) => {
  const spec = standardDraft()
  return { spec: { ...spec, size: { ...spec.size, width } }, typed: { 'size.width': words } }
}

describe('words of a length', () => {
  it('are settled when they mean the length that stands', () => {
    expect(unreadWords(entry(930.275, '36 5/8"'), 'mm')).toEqual([])
    expect(unreadWords(entry(915, ''), 'mm')).toEqual([])
  })

  it('are not when they mean two things, nothing, or another length', () => {
    expect(unreadWords(entry(915, '1,830'), 'mm')).toEqual([
      { field: 'size.width', words: '1,830', asks: true },
    ])
    expect(unreadWords(entry(915, 'a yard'), 'mm')).toEqual([
      { field: 'size.width', words: 'a yard', asks: false },
    ])
    expect(unreadWords(entry(915, '916'), 'mm')).toEqual([{ field: 'size.width', words: '916', asks: false }])
    expect(unreadWords(entry(null, '72"'), 'in')).toHaveLength(1)
  })

  it('of one diagonal wait for the other and hold nothing up, unless they can’t be read', () => {
    const lone = (words: string) => ({ spec: standardDraft(), typed: { 'survey.diagonals.1': words } })
    expect(unreadWords(lone('2133'), 'mm')).toEqual([])
    expect(unreadWords(lone('about two metres'), 'mm')).toHaveLength(1)
  })
})
