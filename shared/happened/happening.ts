/** What the lines of a job's log are about. */
export const happeningKinds = [
  'gate',
  'stage',
  'papers',
  'timber',
  'work',
  'notes',
  'photographs',
  'job',
] as const
export type HappeningKind = (typeof happeningKinds)[number]

/** One line of a job's log: the moment (ISO, universal time), what it is about, and a plain sentence. */
export type Happening = { at: string; kind: HappeningKind; words: string }

/** The most lines that are given at once. */
export const mostLines = 200

/** Lines of a log, newest first. earlier: how many older ones there are, and what `before` is to be for them. */
export type HappeningPage = { lines: Happening[]; earlier: number }

/** The lines of one kind (all for null) before a place counted from the oldest, newest first; 200 at most. Newer lines that come meanwhile move no place. */
export function pageOf(
  oldestFirst: readonly Happening[],
  kind: HappeningKind | null,
  before: number | null,
): HappeningPage {
  const wanted = kind === null ? oldestFirst : oldestFirst.filter((one) => one.kind === kind)
  const end = Math.min(before ?? wanted.length, wanted.length)
  const start = Math.max(0, end - mostLines)
  return { lines: wanted.slice(start, end).reverse(), earlier: start }
}
