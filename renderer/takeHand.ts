/** Opens the folds that hide something. */
export function unfold(element: Element): void {
  for (let hides = element.closest('details'); hides; hides = hides.parentElement?.closest('details') ?? null)
    hides.open = true
}

/** Brings something into sight and puts the keyboard on it, the words of an entry marked so that typing replaces them. */
export function takeHand(element: HTMLElement): void {
  element.scrollIntoView({ block: 'center' })
  element.focus({ preventScroll: true })
  if (element instanceof HTMLInputElement && element.type === 'text') element.select()
}
