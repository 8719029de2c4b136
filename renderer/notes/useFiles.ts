import { onBeforeUnmount, onMounted, ref } from 'vue'

/** Files dropped on a page or pasted into it. `over` is true while some are held over it. Words that are pasted go where they were going. */
export function useFiles(take: (files: File[]) => void) {
  const over = ref(false)
  const hasFiles = (event: DragEvent) => event.dataTransfer?.types.includes('Files') ?? false
  const hold = (event: DragEvent) => {
    if (!hasFiles(event)) return
    event.preventDefault()
    over.value = true
  }
  const leave = (event: DragEvent) => {
    const into = event.relatedTarget
    const isInside =
      event.currentTarget instanceof Node && into instanceof Node && event.currentTarget.contains(into)
    if (!isInside) over.value = false
  }
  const drop = (event: DragEvent) => {
    if (!hasFiles(event)) return
    event.preventDefault()
    over.value = false
    take([...(event.dataTransfer?.files ?? [])])
  }
  const paste = (event: ClipboardEvent) => {
    const files = [...(event.clipboardData?.files ?? [])]
    if (files.length === 0) return
    event.preventDefault()
    take(files)
  }
  onMounted(() => window.addEventListener('paste', paste))
  onBeforeUnmount(() => window.removeEventListener('paste', paste))
  return { over, hold, leave, drop }
}
