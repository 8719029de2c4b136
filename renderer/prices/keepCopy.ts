/** Hands the person a list to keep, under a name, as the browser hands over any download. */
export function keepCopy(name: string, list: string, type = 'text/csv;charset=utf-8'): void {
  const address = URL.createObjectURL(new Blob([list], { type }))
  const link = document.createElement('a')
  link.href = address
  link.download = name
  link.click()
  setTimeout(() => URL.revokeObjectURL(address), 10_000)
}
