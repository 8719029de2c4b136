/** What help is asked for: the field in hand with its label, and the finding that has the hand on it. */
export type Asked = { field: string; label: string; check: string }

const labelOf = (element: Element): string => {
  const id = element.getAttribute('aria-labelledby')
  const by = id ? document.getElementById(id) : undefined
  const own =
    element instanceof HTMLInputElement ||
    element instanceof HTMLTextAreaElement ||
    element instanceof HTMLSelectElement
      ? element.labels?.[0]
      : undefined
  return (
    (by ?? own ?? element.closest('[role="radiogroup"]')?.querySelector('.label'))?.textContent?.trim() ?? ''
  )
}

/** Reads what has the hand on it just now. */
export function askedFor(held: Element | null): Asked {
  const field = held?.closest('[data-field]')
  const check = held?.closest('[data-check]')
  return {
    field: field?.getAttribute('data-field') ?? '',
    label: held ? labelOf(held) || (field?.getAttribute('aria-label') ?? '') : '',
    check: check?.getAttribute('data-check') ?? '',
  }
}
