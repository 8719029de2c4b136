const mains = 'button.press.main:not(:disabled)'

const inSight = (element: HTMLElement): boolean => element.getClientRects().length > 0

const within = (room: Element): HTMLElement[] =>
  [...room.querySelectorAll<HTMLElement>(mains)].filter(inSight)

/**
 * The filled button that belongs to what has the hand: the one in the nearest part of the screen that has any. Several there are several choices,
 * so none of them is meant; nor is any by what lies over the screen or beside it.
 */
export function mainThing(from: Element | null): HTMLElement | undefined {
  const place = document.querySelector('main')
  if (!place) return undefined
  const start = from === null || from === document.body ? place : from
  for (let room: Element | null = start; room && place.contains(room); room = room.parentElement) {
    const found = within(room)
    if (found.length > 0) return found.length === 1 ? found[0] : undefined
  }
  return undefined
}
