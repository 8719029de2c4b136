import { defineStore } from 'pinia'
import { ref } from 'vue'

/** The part pointed at or being typed into, by its name in the drawing: lit in the drawing, the cut list and the form alike. */
export const useLitStore = defineStore('lit', () => {
  const lit = ref<string | null>(null)
  const light = (part: string | null | undefined) => (lit.value = part ?? null)
  /** What a row needs to light its part: by pointer, by finger and by focus alike. */
  const over = (part: string | null | undefined) => ({
    onPointerenter: () => light(part),
    onPointerleave: () => light(null),
    onFocusin: () => light(part),
    onFocusout: () => light(null),
  })
  return { lit, light, over }
})
