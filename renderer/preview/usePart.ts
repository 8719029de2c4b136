import { computed, ref, shallowRef, watch, type Ref } from 'vue'
import { pageChoice } from '../../shared/papers/pageChoice.ts'
import { request, sentences } from '../api.ts'
import { capital } from '../format.ts'
import { bytesOf, markOf } from '../paperBytes.ts'

/** What is shown, and just that is printed: a paper, or the part of it that was chosen. */
type Shown = { bytes: Uint8Array<ArrayBuffer>; part: boolean }

/** Long enough for the next figure of '12' to be typed. */
const typingMs = 250

/** Which pages of a paper of so many, and how many copies, as they are typed. */
function useChoice() {
  /** How many pages the whole paper has; 0 until it is open. */
  const count = ref(0)
  const pages = ref('')
  const copies = ref(1)
  const read = computed(() => pageChoice(pages.value, count.value))
  const problem = computed(() => (count.value === 0 || read.value.ok ? '' : capital(sentences(read.value))))
  const chosen = computed(() => (read.value.ok ? read.value.value : undefined))
  const isAll = computed(() => chosen.value?.length === count.value && copies.value === 1)
  function reset() {
    count.value = 0
    pages.value = ''
    copies.value = 1
  }
  /** What is asked of the book: undefined while the choice can't be read or the paper isn't open. */
  const asking = () =>
    chosen.value && count.value > 0 ? { pages: chosen.value, copies: copies.value } : undefined
  return { count, pages, copies, problem, isAll, asking, reset }
}

/** What is shown, what was said instead of the last choice, and whether a choice was made whose paper isn't there yet. */
function useShown(first: Shown) {
  const shown = shallowRef<Shown>(first)
  const trouble = ref('')
  const busy = ref(false)
  function show(next: Shown, said = '') {
    shown.value = next
    trouble.value = said
    busy.value = false
  }
  return { shown, trouble, busy, show }
}

/** Does the last work wanted once nothing more was wanted for a moment. */
function afterTyping(work: () => Promise<void>) {
  let timer: ReturnType<typeof setTimeout> | undefined
  const forget = () => clearTimeout(timer)
  const soon = () => {
    forget()
    timer = setTimeout(() => void work(), typingMs)
  }
  return { soon, forget }
}

/**
 * The part of a paper that is shown and printed: the pages and copies chosen. A choice that can't be read leaves the part as it was and says why.
 * Another paper starts with all its pages, once.
 */
export function usePart(base64: Ref<string>) {
  const whole = computed(() => bytesOf(base64.value))
  const { count, pages, copies, problem, isAll, asking, reset } = useChoice()
  const { shown, trouble, busy, show } = useShown({ bytes: whole.value, part: false })
  let asked = 0

  async function take(): Promise<void> {
    const mine = ++asked
    const wanted = asking()
    if (!wanted) return void (busy.value = false)
    if (isAll.value) return show({ bytes: whole.value, part: false })
    const sha256 = await markOf(whole.value)
    const reply = await request('papers.part', { sha256, ...wanted })
    if (mine !== asked) return
    const part = reply.ok ? { bytes: bytesOf(reply.value.base64), part: true } : shown.value
    show(part, capital(sentences(reply)))
  }
  const { soon, forget } = afterTyping(take)
  watch(whole, (bytes) => {
    forget()
    asked += 1
    reset()
    show({ bytes, part: false })
  })
  watch([pages, copies], () => {
    busy.value = count.value > 0
    if (busy.value) soon()
  })
  /** Told how many pages what is shown has; only the whole paper's count is the paper's. */
  const opened = (found: number) => {
    if (!shown.value.part) count.value = found
  }
  /** Has what was typed last taken before it is printed; false where it can't be. */
  async function settle(): Promise<boolean> {
    forget()
    if (busy.value) await take()
    return problem.value === '' && trouble.value === ''
  }
  return { pages, copies, shown, problem, trouble, busy, opened, settle }
}
