/** Does works one after another in the order they came, whatever became of those before. */
export function oneAtATime(): <T>(work: () => Promise<T>) => Promise<T> {
  const line: { last: Promise<unknown> } = { last: Promise.resolve() }
  return (work) => {
    const mine = line.last.then(work, work)
    line.last = mine.catch(() => undefined)
    return mine
  }
}
