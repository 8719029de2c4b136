import { onBeforeUnmount, onMounted } from 'vue'

/** What the keys of the price list do: find puts the hand into the search where there is one; back leaves what is open, or says that nothing is. */
export type PricesKeys = { find: (() => void) | undefined; back: () => boolean }

const isEntry = (target: EventTarget | null): boolean =>
  target instanceof HTMLInputElement || target instanceof HTMLTextAreaElement

/** Ctrl and F or a slash find a price; Escape goes back a step, unless it is an entry's or an open list's own. */
function press(event: KeyboardEvent, { find, back }: PricesKeys): void {
  if (event.defaultPrevented) return
  const entry = isEntry(event.target)
  const finds = event.key.toLowerCase() === 'f' && (event.ctrlKey || event.metaKey)
  if (find && (finds || (event.key === '/' && !entry))) {
    event.preventDefault()
    find()
  } else if (event.key === 'Escape' && !entry && !document.querySelector('[role="listbox"]') && back())
    event.preventDefault()
}

/** Listens to the window's keys for as long as the screen that asks stands. */
export function useKeys(keys: () => PricesKeys): void {
  const heard = (event: KeyboardEvent) => press(event, keys())
  onMounted(() => window.addEventListener('keydown', heard, true))
  onBeforeUnmount(() => window.removeEventListener('keydown', heard, true))
}
