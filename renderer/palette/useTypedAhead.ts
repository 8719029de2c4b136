import { onBeforeUnmount, onMounted, ref, watch, type Ref } from 'vue'

/** What was typed for the list of commands before it had the hand: its letters, and whether Enter came after them. */
export type TypedAhead = { letters: string; enter: boolean }

/** A list that isn't there after this long, ms, couldn't be read: the keys are the screen's again. */
const patienceMs = 3000
const nothing: TypedAhead = { letters: '', enter: false }

/** What one more key makes of what was typed; undefined where the key is none for the list. */
export function withKey({ letters, enter }: TypedAhead, key: string): TypedAhead | undefined {
  if (key === 'Enter') return { letters, enter: true }
  if (key === 'Backspace') return { letters: [...letters].slice(0, -1).join(''), enter }
  return [...key].length === 1 ? { letters: letters + key, enter } : undefined
}

/**
 * Keeps the keys that are pressed between asking for the list of commands and its having the hand, so that none is lost,
 * and none goes into an entry or presses a button behind it.
 */
export function useTypedAhead(listed: Ref<boolean>): Ref<TypedAhead> {
  const ahead = ref(nothing)
  const asked = { at: 0 }
  const key = (event: KeyboardEvent) => {
    if (!listed.value || event.ctrlKey || event.metaKey || event.altKey) return
    if (document.querySelector('dialog.commands[open]') || event.timeStamp > asked.at + patienceMs) return
    const more = withKey(ahead.value, event.key)
    if (!more) return
    event.preventDefault()
    event.stopImmediatePropagation()
    ahead.value = more
  }
  const begin = () => {
    ahead.value = nothing
    asked.at = performance.now()
  }
  watch(listed, begin, { flush: 'sync' })
  onMounted(() => window.addEventListener('keydown', key, true))
  onBeforeUnmount(() => window.removeEventListener('keydown', key, true))
  return ahead
}
