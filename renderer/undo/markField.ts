/** How long an entry stays marked, ms: as long as a glance needs to find it. */
const markedFor = 2400

/** Marks the entry of a path ('size.width') for a moment and brings it into sight; the nearest above it where that has none of its own. Nothing where neither shows. */
export function markField(path: string): void {
  const keys = path.split('.')
  for (let length = path === '' ? 0 : keys.length; length > 0; length -= 1) {
    const name = CSS.escape(keys.slice(0, length).join('.'))
    const found = document.querySelector<HTMLElement>(`main [data-field="${name}"]`)
    if (!found) continue
    found.scrollIntoView({ block: 'nearest' })
    found.classList.add('taken-back')
    setTimeout(() => found.classList.remove('taken-back'), markedFor)
    return
  }
}
