/** Hands the person a picture to keep, under a name, as the browser hands over any download. */
export function keepPicture(name: string, picture: Blob): void {
  const address = URL.createObjectURL(picture)
  const link = document.createElement('a')
  link.href = address
  link.download = name
  link.click()
  setTimeout(() => URL.revokeObjectURL(address), 10_000)
}
