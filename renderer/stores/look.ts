import { defineStore } from 'pinia'
import { ref } from 'vue'
import type { Look } from '../theme/look.ts'
import { keepLook, keptLook, watchLook, wearLook } from '../theme/wearLook.ts'

/** How the screens look: worn at once, and kept with this machine. */
export const useLookStore = defineStore('look', () => {
  const look = ref<Look>(keptLook())

  function choose(some: Partial<Look>): void {
    look.value = { ...look.value, ...some }
    keepLook(look.value)
    wearLook(look.value)
  }
  watchLook(() => {
    look.value = keptLook()
    wearLook(look.value)
  })
  return { look, choose }
})
