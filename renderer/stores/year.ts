import { defineStore } from 'pinia'
import { ref, shallowRef } from 'vue'
import type { YearBook } from '../../shared/job/yearBook.ts'
import { request, sentences } from '../api.ts'

/** A year of the book, added up anew each time it is looked at. */
export const useYearStore = defineStore('year', () => {
  const book = shallowRef<YearBook | null>(null)
  const chosen = ref<number | null>(null)
  const trouble = ref('')
  const adding = ref(false)
  let asked = 0

  async function read(): Promise<void> {
    const mine = ++asked
    adding.value = true
    const reply = await request('jobs.year', { year: chosen.value })
    if (mine !== asked) return
    adding.value = false
    if (reply.ok) book.value = reply.value
    trouble.value = sentences(reply)
  }
  const choose = (year: number): Promise<void> => {
    chosen.value = year
    return read()
  }
  return { book, chosen, trouble, adding, read, choose }
})
