const steps: Record<string, [column: number, row: number]> = {
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
}

const cardAt = (board: HTMLElement, column: number, row: number): HTMLElement | null =>
  board.querySelector(`[data-at="${column}.${row}"] a.line`)

/** The last card of a column that is as far down as a row, or higher. */
function nearest(board: HTMLElement, column: number, row: number): HTMLElement | null {
  for (let place = row; place >= 0; place -= 1) {
    const card = cardAt(board, column, place)
    if (card) return card
  }
  return null
}

/** The card that an arrow key leads to from the one in hand, columns without a card passed over; undefined for any other key. */
export function besideCard(event: KeyboardEvent, board: HTMLElement): HTMLElement | undefined {
  const step = steps[event.key]
  const from = event.target instanceof HTMLElement && event.target.closest<HTMLElement>('[data-at]')
  if (!step || !from || event.altKey || event.ctrlKey || event.metaKey || event.shiftKey) return undefined
  const [column = 0, row = 0] = (from.dataset['at'] ?? '').split('.').map(Number)
  if (step[1] !== 0) return cardAt(board, column, row + step[1]) ?? undefined
  for (let next = column + step[0]; next >= 0 && next < 7; next += step[0]) {
    const card = nearest(board, next, row)
    if (card) return card
  }
  return undefined
}
