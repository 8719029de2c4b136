/** What a person wrote: names, titles, notes. It is shown as it stands in every language. */
export type OwnWords = {
  add: (text: string) => void
  has: (text: string) => boolean
  /** Grows with each word not seen before. */
  count: () => number
}

export function ownWords(): OwnWords {
  const known = new Set<string>()
  return {
    add: (text) => {
      const bare = text.trim()
      if (/\p{L}{2}/u.test(bare)) known.add(bare)
    },
    has: (text) => known.has(text),
    count: () => known.size,
  }
}

/**
 * Entries of what the book answers that hold what a person wrote. Everything else in an answer is a figure, a key or one of the
 * program's own sentences.
 */
const writtenByHand = new Set(
  `title customer customerName town name notes note address phone email website workshop workshopName terms included notIncluded
   supplier supplierName place number code origin folder`.split(/\s+/),
)

/** Entries that are named alike and are never a person's. */
const kinds = new Set([
  'left',
  'right',
  'hours',
  'timber',
  'hanging',
  'closing',
  'single',
  'lower',
  'upper',
  'bottom',
  'middle',
  'top',
])

/** Notes every word a person wrote in what the book answered, however deep. */
export function noteOwnWords(answer: unknown, own: OwnWords, key = ''): void {
  if (typeof answer === 'string') {
    if (writtenByHand.has(key) && !kinds.has(answer)) own.add(answer)
    return
  }
  if (typeof answer !== 'object' || answer === null) return
  for (const [under, value] of Object.entries(answer))
    noteOwnWords(value, own, Array.isArray(answer) ? key : under)
}
