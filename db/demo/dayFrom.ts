const dayLength = 24 * 60 * 60 * 1000

/** A day so many days from another, both as 2026-05-31. */
export const dayFrom = (today: string, days: number): string =>
  new Date(Date.parse(`${today}T00:00:00Z`) + days * dayLength).toISOString().slice(0, 10)
