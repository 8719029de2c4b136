import { defineStore } from 'pinia'
import { ref } from 'vue'
import type { Asked } from '../help/askedFor.ts'

/** Whether help lies open beside the screen, and what it was asked for. */
export const useHelpStore = defineStore('help', () => {
  const asked = ref<Asked | null>(null)
  let held: Element | null = null

  /** Opens help; where the hand was is remembered, to go back to. */
  function ask(what: Asked) {
    if (!asked.value) held = document.activeElement
    asked.value = what
  }
  function leave() {
    asked.value = null
    if (held instanceof HTMLElement && held.isConnected) held.focus()
  }
  /** Help for one finding of the gate's check. */
  const askWhy = (check: string) => ask({ field: '', label: '', check })
  return { asked, ask, askWhy, leave }
})
