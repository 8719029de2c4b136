/** Where a figure would like to stand, and the room it takes there, mm. */
export type Wanted = { at: number; room: number }

/**
 * Places for figures along a line so that none stands on another, in the order given (rising), as near to where they want to be as room
 * between from and to lets them. Too many are pressed together from the end.
 */
export function spread(wanted: readonly Wanted[], from: number, to: number): number[] {
  const places: number[] = []
  let free = from
  for (const { at, room } of wanted) {
    const place = Math.max(at, free + room / 2)
    places.push(place)
    free = place + room / 2
  }
  let limit = to
  for (let i = places.length - 1; i >= 0; i--) {
    const { room = 0 } = wanted[i] ?? {}
    places[i] = Math.min(places[i] ?? 0, limit - room / 2)
    limit = (places[i] ?? 0) - room / 2
  }
  return places
}
