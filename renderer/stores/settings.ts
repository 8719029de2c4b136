import { defineStore } from 'pinia'
import { ref } from 'vue'
import type { BookSummary, KeptSection, Takes } from '../../shared/contract.ts'
import type { Result } from '../../shared/problem.ts'
import type { Section } from '../../shared/gate/spec.ts'
import { request, sentences } from '../api.ts'
import { followLanguage } from '../language/chosen.ts'

type Use = KeptSection['use']

/** The workshop: its own settings, and the sections it keeps. */
export const useSettingsStore = defineStore('settings', () => {
  const summary = ref<BookSummary | null>(null)
  const sections = ref<KeptSection[]>([])
  const trouble = ref('')

  async function read(): Promise<void> {
    const [book, held] = await Promise.all([request('book.summary', {}), request('sections.list', {})])
    if (book.ok && !followLanguage(book.value.settings.language)) summary.value = book.value
    if (held.ok) sections.value = held.value
    trouble.value = sentences(book) || sentences(held)
  }

  /** Changes some of the settings; the reply is told, and the screen follows only what the book has taken. */
  async function change(some: Takes<'settings.change'>): Promise<string> {
    const reply = await request('settings.change', some)
    if (reply.ok && followLanguage(reply.value.language)) return ''
    if (reply.ok && summary.value)
      summary.value = { ...summary.value, workshopName: reply.value.name, settings: reply.value }
    return sentences(reply)
  }

  const followed = (reply: Result<KeptSection[]>): string => {
    if (reply.ok) sections.value = reply.value
    return sentences(reply)
  }
  const addSection = async (use: Use, section: Section) =>
    followed(await request('sections.add', { use, section }))
  const changeSection = async (id: number, section: Section) =>
    followed(await request('sections.change', { id, section }))
  const removeSection = async (id: number) => followed(await request('sections.remove', { id }))

  async function removeSample(): Promise<Result<{ removed: number }>> {
    const reply = await request('sample.remove', {})
    if (reply.ok) await read()
    return reply
  }

  return { summary, sections, trouble, read, change, addSection, changeSection, removeSection, removeSample }
})
