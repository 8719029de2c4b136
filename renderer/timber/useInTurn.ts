import { onBeforeUnmount, ref, watch, type Ref } from 'vue'

/** Things to be shown one stretch after the other, so that the window can answer in between: how many of count are to be shown by now, atOnce more each time. */
export function useInTurn(count: () => number, atOnce = 1): Ref<number> {
  const shown = ref(0)
  let waiting: ReturnType<typeof setTimeout> | undefined
  const next = () => {
    clearTimeout(waiting)
    if (shown.value >= count()) return
    waiting = setTimeout(() => {
      shown.value += atOnce
      next()
    }, 0)
  }
  watch(count, next, { immediate: true })
  onBeforeUnmount(() => clearTimeout(waiting))
  return shown
}
