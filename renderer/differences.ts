import type { Difference } from '../shared/job/job.ts'

/** 'board 3 length' as its board's number and what of it; undefined for anything else. */
function ofBoard({ what }: Difference): { board: number; of: string } | undefined {
  const found = /^board (\d+) (.+)$/.exec(what)
  return found ? { board: Number(found[1]), of: found[2] ?? '' } : undefined
}

/**
 * The differences with neighbouring boards that changed alike told once: 'boards 1 to 9 length' in place of nine lines. The order stays.
 */
export function boardsTogether(differences: readonly Difference[]): Difference[] {
  const runs: { first: Difference; count: number }[] = []
  for (const one of differences) {
    const last = runs.at(-1)
    const [own, before] = [ofBoard(one), last && ofBoard(last.first)]
    const follows =
      last &&
      own &&
      before &&
      own.of === before.of &&
      own.board === before.board + last.count &&
      one.before === last.first.before &&
      one.after === last.first.after
    if (follows) last.count += 1
    else runs.push({ first: one, count: 1 })
  }
  return runs.map(({ first, count }) => {
    const board = ofBoard(first)
    if (!board || count === 1) return first
    return { ...first, what: `boards ${board.board} to ${board.board + count - 1} ${board.of}` }
  })
}
