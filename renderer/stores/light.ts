import { defineStore } from 'pinia'
import { ref, watch } from 'vue'

export const lights = ['system', 'light', 'dark'] as const
export type Light = (typeof lights)[number]

const remembered = 'bracework.light'

const known = (word: string | null): Light => lights.find((light) => light === word) ?? 'system'

/** Light or dark board, or as the computer is set. Kept with this screen, not in the book: another screen may want another. */
export const useLightStore = defineStore('light', () => {
  const light = ref<Light>(known(window.localStorage.getItem(remembered)))

  watch(
    light,
    (chosen) => {
      if (chosen === 'system') delete document.documentElement.dataset['theme']
      else document.documentElement.dataset['theme'] = chosen
      window.localStorage.setItem(remembered, chosen)
    },
    { immediate: true },
  )
  return { light }
})
