import type { Book } from '../../db/open.ts'

/** What goes on with a book: how many requests are being answered, what new ones wait for, who is told when one is done. */
type Going = { running: number; hold: Promise<void> | null; done: (() => void)[] }

const goingOn = new WeakMap<Book, Going>()

const going = (book: Book): Going => {
  const known = goingOn.get(book) ?? { running: 0, hold: null, done: [] }
  goingOn.set(book, known)
  return known
}

/** Answers a request in its turn: not while the book is held still. */
export async function inTurn<T>(book: Book, work: () => Promise<T>): Promise<T> {
  const state = going(book)
  while (state.hold) await state.hold
  state.running += 1
  try {
    return await work()
  } finally {
    state.running -= 1
    for (const told of state.done.splice(0)) told()
  }
}

/**
 * Does what no other request may come into: new ones wait, those that are being answered are waited for, the one that asks for this left out. The
 * program itself goes on, so that a window is answered as soon as it is over.
 */
export async function whileStill<T>(book: Book, work: () => Promise<T>): Promise<T> {
  const state = going(book)
  while (state.hold) await state.hold
  const waiting: (() => void)[] = []
  state.hold = new Promise((over) => waiting.push(over))
  try {
    while (state.running > 1) await new Promise<void>((told) => state.done.push(told))
    return await work()
  } finally {
    state.hold = null
    for (const over of waiting) over()
  }
}
