/** Two runs of the 32-bit FNV-1a hash (Fowler, Noll, Vo) from different starts, so that two texts that differ hardly ever meet in both. */
const starts = [0x811c9dc5, 0x6b84c3a1] as const
const prime = 0x01000193

const hash = (text: string, start: number): number => {
  let sum = start
  for (let at = 0; at < text.length; at += 1) sum = Math.imul(sum ^ text.charCodeAt(at), prime)
  return sum >>> 0
}

/** A short name for anything that can be written down: 16 letters, the same for the same contents. It keeps nothing secret. */
export const stampOf = (contents: unknown): string => {
  const text = JSON.stringify(contents)
  return starts.map((start) => hash(text, start).toString(16).padStart(8, '0')).join('')
}
