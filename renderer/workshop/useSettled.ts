import { onBeforeUnmount, ref, watch, type Ref } from 'vue'
import type { Settings } from '../../shared/contract.ts'
import { useSettingsStore } from '../stores/settings.ts'

type Part = 'money' | 'times' | 'business' | 'cutting' | 'printer'

/**
 * One part of the workshop's settings as it is being written: kept as a whole after a short rest of the hand, on leaving the screen and on
 * closing the window.
 */
export function useSettled<P extends Part>(
  part: P,
): {
  now: Ref<Settings[P] | null>
  trouble: Ref<string>
  changed: (some: Partial<Settings[P]>) => void
} {
  const settings = useSettingsStore()
  const now = ref(null) as Ref<Settings[P] | null>
  const trouble = ref('')
  let timer: ReturnType<typeof setTimeout> | undefined
  let unsent = false

  watch(
    () => settings.summary?.settings[part],
    (stands) => {
      if (stands && !unsent) now.value = stands
    },
    { immediate: true },
  )
  async function send() {
    clearTimeout(timer)
    if (!now.value || !unsent) return
    unsent = false
    trouble.value = await settings.change({ [part]: now.value })
  }
  const sendNow = () => void send()
  function changed(some: Partial<Settings[P]>) {
    if (!now.value) return
    now.value = { ...now.value, ...some }
    unsent = true
    clearTimeout(timer)
    timer = setTimeout(sendNow, 350)
  }
  window.addEventListener('pagehide', sendNow)
  onBeforeUnmount(() => {
    window.removeEventListener('pagehide', sendNow)
    sendNow()
  })
  return { now, trouble, changed }
}
