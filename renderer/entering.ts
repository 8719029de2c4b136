/** What Enter moves between: the entries of a form, not its buttons. */
const entries =
  'input:not([disabled]):not([type="radio"]), input[type="radio"]:checked, textarea, [role="combobox"]'

const inSight = (element: HTMLElement): boolean =>
  element.offsetParent !== null || element.classList.contains('unseen')

/**
 * Enter goes to the next entry of the form, as Tab does, skipping buttons. Answers true when there was a next one. A note of
 * several lines keeps Enter for itself, and an open list for choosing.
 */
export function enterMovesOn(event: KeyboardEvent): boolean {
  const from = event.target
  if (event.key !== 'Enter' || event.ctrlKey || event.metaKey || event.altKey) return false
  if (!(from instanceof HTMLElement) || !(event.currentTarget instanceof HTMLElement)) return false
  if (!(from instanceof HTMLInputElement)) return false
  event.preventDefault()
  const all = [...event.currentTarget.querySelectorAll<HTMLElement>(entries)].filter(inSight)
  const next = all[all.indexOf(from) + (event.shiftKey ? -1 : 1)]
  if (!next) return false
  next.focus()
  if (next instanceof HTMLInputElement && next.type !== 'radio') next.select()
  return true
}
