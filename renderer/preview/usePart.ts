import { computed, ref, shallowRef, watch, type Ref } from 'vue'
import { pageChoice } from '../../shared/papers/pageChoice.ts'
import { request, sentences } from '../api.ts'
import { capital } from '../format.ts'
import { bytesOf, markOf } from '../paperBytes.ts'

/** A paper, or the part of it that was chosen: what is shown, and just that is printed. */
export type Shown = { bytes: Uint8Array<ArrayBuffer>; sha256: string; pages: number }

/** Long enough for the next figure of '12' to be typed. */
const typingMs = 250

/**
 * The part of a paper that is shown and printed: the pages and copies chosen. A choice that can't be read leaves the part as it was and says why.
 * Another paper starts with all its pages, once.
 */
export function usePart(base64: Ref<string>) {
  const whole = computed(() => bytesOf(base64.value))
  /** How many pages the whole paper has, told by whoever opened it. */
  const count = ref(0)
  const pages = ref('')
  const copies = ref(1)
  const shown = shallowRef<{ bytes: Uint8Array<ArrayBuffer>; part: boolean }>({
    bytes: whole.value,
    part: false,
  })
  const trouble = ref('')
  /** A choice was made and its paper isn't there yet. */
  const busy = ref(false)
  let asked = 0
  let timer: ReturnType<typeof setTimeout> | undefined

  const read = computed(() => pageChoice(pages.value, count.value))
  const problem = computed(() => (count.value === 0 || read.value.ok ? '' : capital(sentences(read.value))))
  const isAll = computed(() => read.value.ok && read.value.value.length === count.value && copies.value === 1)

  watch(whole, (bytes) => {
    clearTimeout(timer)
    asked += 1
    count.value = 0
    pages.value = ''
    copies.value = 1
    trouble.value = ''
    busy.value = false
    shown.value = { bytes, part: false }
  })
  /** Told how many pages what is shown has; only the whole paper's count is the paper's. */
  function opened(found: number) {
    if (!shown.value.part) count.value = found
  }

  async function take(): Promise<void> {
    const mine = ++asked
    const chosen = read.value
    if (!chosen.ok || count.value === 0) return void (busy.value = false)
    if (isAll.value) {
      shown.value = { bytes: whole.value, part: false }
      trouble.value = ''
      busy.value = false
      return
    }
    const sha256 = await markOf(whole.value)
    const reply = await request('papers.part', { sha256, pages: chosen.value, copies: copies.value })
    if (mine !== asked) return
    busy.value = false
    trouble.value = capital(sentences(reply))
    if (reply.ok) shown.value = { bytes: bytesOf(reply.value.base64), part: true }
  }
  watch([pages, copies], () => {
    if (count.value === 0) return
    clearTimeout(timer)
    busy.value = true
    timer = setTimeout(() => void take(), typingMs)
  })
  /** Has what was typed last taken before it is printed. */
  async function settle(): Promise<boolean> {
    clearTimeout(timer)
    if (busy.value) await take()
    return problem.value === '' && trouble.value === ''
  }
  return { pages, copies, shown, problem, trouble, busy, opened, settle }
}
