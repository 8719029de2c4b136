import { onBeforeUnmount, ref, watch, type Ref } from 'vue'

/** How high something stands on the screen, px, as long as it is there; 0 while it isn't. Followed as it changes. */
export function useHeightOf(element: () => HTMLElement | null | undefined): Ref<number> {
  const height = ref(0)
  const measure = () => (height.value = element()?.offsetHeight ?? 0)
  const sized = typeof ResizeObserver === 'undefined' ? null : new ResizeObserver(measure)
  watch(
    element,
    (now, before) => {
      if (before) sized?.unobserve(before)
      if (now) sized?.observe(now)
      measure()
    },
    { flush: 'post', immediate: true },
  )
  onBeforeUnmount(() => sized?.disconnect())
  return height
}
