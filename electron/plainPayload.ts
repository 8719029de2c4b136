/** How deep any request's lists and objects go at most: an order's plan brings its proof, splits within splits. */
const mostDepth = 400

const isPlainObject = (value: object): boolean => {
  const above: unknown = Object.getPrototypeOf(value)
  return above === Object.prototype || above === null
}

/**
 * Whether what a page sent is made only of what a request can be made of: texts, finite numbers, yes and no, nothing,
 * lists and plain records, no deeper than any request goes. The window's carrier copies much more (maps, dates, buffers,
 * circles); no request has a use for them, and so both carriers let the same things through. Walks without calling itself,
 * so that depth costs nothing.
 */
export const isPlainPayload = (payload: unknown): boolean => {
  const waiting: { value: unknown; depth: number }[] = [{ value: payload, depth: 0 }]
  for (let next = waiting.pop(); next; next = waiting.pop()) {
    const { value, depth } = next
    if (value === null || typeof value === 'string' || typeof value === 'boolean') continue
    if (typeof value === 'number' && Number.isFinite(value)) continue
    if (typeof value !== 'object' || depth >= mostDepth) return false
    if (!Array.isArray(value) && !isPlainObject(value)) return false
    for (const inner of Object.values(value)) waiting.push({ value: inner, depth: depth + 1 })
  }
  return true
}
