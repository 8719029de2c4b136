import { defineStore } from 'pinia'
import { ref } from 'vue'

/** The part pointed at or being typed into, by its name in the drawing: lit in the drawing, the cut list and the form alike. */
export const useLitStore = defineStore('lit', () => {
  const lit = ref<string | null>(null)
  const light = (part: string | null | undefined) => (lit.value = part ?? null)
  return { lit, light }
})
