/** What the keys lead to. */
export type UndoKeys = { back: () => void; again: () => void }

const isEntry = (held: EventTarget | null): held is HTMLInputElement | HTMLTextAreaElement =>
  held instanceof HTMLTextAreaElement ||
  (held instanceof HTMLInputElement && !['radio', 'checkbox', 'button', 'range'].includes(held.type))

/** Which of the two a key means: Ctrl+Z, and Ctrl+Shift+Z or Ctrl+Y; Cmd on a Mac. */
function meant(event: KeyboardEvent): keyof UndoKeys | undefined {
  if (!(event.ctrlKey || event.metaKey) || event.altKey) return undefined
  const key = event.key.toLowerCase()
  if (key === 'y' && !event.shiftKey) return 'again'
  return key === 'z' ? (event.shiftKey ? 'again' : 'back') : undefined
}

/**
 * Has the keys for taking back and doing again answered. Inside an entry where something was typed since it was entered, its own taking back comes
 * first, letter by letter; once it stands as it stood, or nothing was typed there, the book's comes. Answers how to stop.
 */
export function watchUndoKeys(keys: UndoKeys): () => void {
  const typing = { held: null as EventTarget | null, stood: '', typed: false }
  const enter = ({ target }: Event) => {
    typing.held = target
    typing.typed = false
    typing.stood = isEntry(target) ? target.value : ''
  }
  const input = ({ target }: Event) => {
    if (target !== typing.held) enter({ target } as Event)
    typing.typed = isEntry(target) && target.value !== typing.stood
  }
  const press = (event: KeyboardEvent) => {
    const way = meant(event)
    if (!way || event.defaultPrevented) return
    event.preventDefault()
    // The browser's own way back inside an entry: no other reaches its letters.
    if (isEntry(event.target) && typing.typed) document.execCommand(way === 'back' ? 'undo' : 'redo')
    // A key held down by a sleeve takes back one thing, not a day's work.
    else if (!event.repeat) keys[way]()
  }
  window.addEventListener('focusin', enter)
  window.addEventListener('input', input)
  window.addEventListener('keydown', press)
  return () => {
    window.removeEventListener('focusin', enter)
    window.removeEventListener('input', input)
    window.removeEventListener('keydown', press)
  }
}
