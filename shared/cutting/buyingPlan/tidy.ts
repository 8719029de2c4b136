import { filledBy, gathered, keyOf, wasteOf, type Line } from './layOut.ts'
import type { SectionWork } from './sectionWork.ts'

/** Ways of sharing out two lengths' parts that are looked at in all: a job needs hundreds. */
const mostWays = 200_000

type Tidying = { work: SectionWork; lines: Line[]; ways: number; stop: () => boolean }

/** Lines of a kind moved to another kind at the same price where that wastes less; true when one was. */
function changeKinds(tidying: Tidying): boolean {
  const { work } = tidying
  const left = work.kinds.map(({ most }) => most)
  for (const { kind, times } of tidying.lines) left[kind] = (left[kind] as number) - times
  let changed = false
  for (const line of [...tidying.lines]) {
    const size = filledBy(work, line.counts)
    const now = wasteOf(work, line)
    work.kinds.forEach(({ room, pence }, kind) => {
      const times = Math.min(line.times, left[kind] as number)
      if (times <= 0 || kind === line.kind || room < size || pence !== work.kinds[line.kind]?.pence) return
      if (wasteOf(work, { kind, counts: line.counts }) >= now) return
      left[kind] = (left[kind] as number) - times
      left[line.kind] = (left[line.kind] as number) + times
      line.times -= times
      tidying.lines.push({ kind, counts: line.counts, times })
      changed = true
    })
  }
  tidying.lines = gathered(tidying.lines)
  return changed
}

/** Two lines taken together so often; a line may stand beside itself. */
type Pair = { a: Line; b: Line; often: number; pool: number[] }

function pairOf(a: Line, b: Line): Pair {
  const often = a === b ? Math.floor(a.times / 2) : Math.min(a.times, b.times)
  return { a, b, often, pool: a.counts.map((count, part) => count + (b.counts[part] as number)) }
}

/** Every way of sharing the pooled parts between the two lengths that fits both. */
function lookAtWays(tidying: Tidying, { a, b, pool }: Pair, look: (first: number[]) => void): void {
  const { work } = tidying
  const roomA = work.kinds[a.kind]?.room ?? 0
  const least = filledBy(work, pool) - (work.kinds[b.kind]?.room ?? 0)
  const pooled = pool.flatMap((count, part) => (count > 0 ? [part] : []))
  const first = new Array<number>(pool.length).fill(0)
  const choose = (at: number, filled: number): void => {
    if (filled > roomA || tidying.ways > mostWays) return
    const part = pooled[at]
    if (part === undefined) {
      tidying.ways += 1
      if (filled >= least) look(first)
      return
    }
    const size = (work.parts[part]?.length ?? 0) + work.kerf
    for (let count = 0; count <= (pool[part] as number); count += 1) {
      first[part] = count
      choose(at + 1, filled + count * size)
    }
    first[part] = 0
  }
  choose(0, 0)
}

/** The keys of the plan's lines that stay when the pair is taken out. */
function keysBeside({ a, b, often }: Pair, keys: ReadonlySet<string>): (key: string) => boolean {
  const isSpent = (line: Line) => line.times === (a === b ? 2 * often : often)
  const spent = [a, b].filter(isSpent).map(keyOf)
  return (key) => keys.has(key) && !spent.includes(key)
}

type Share = { first: number[]; second: number[]; waste: number; patterns: number }

/** The best way of sharing a pair's parts anew: less waste, or as much and fewer patterns. */
function betterShare(tidying: Tidying, pair: Pair, keys: ReadonlySet<string>): Share | undefined {
  const { work } = tidying
  const { a, b, pool } = pair
  const stays = keysBeside(pair, keys)
  const rated = (first: number[], second: number[]): Share => {
    const halves = [
      { kind: a.kind, counts: first },
      { kind: b.kind, counts: second },
    ].filter(({ counts }) => counts.some((count) => count > 0))
    const fresh = new Set(halves.map(keyOf).filter((key) => !stays(key)))
    return {
      first,
      second,
      waste: halves.reduce((sum, half) => sum + wasteOf(work, half), 0),
      patterns: fresh.size,
    }
  }
  const before = rated(a.counts, b.counts)
  let best = before
  lookAtWays(tidying, pair, (first) => {
    const second = pool.map((count, part) => count - (first[part] as number))
    const share = rated([...first], second)
    if (share.waste < best.waste || (share.waste === best.waste && share.patterns < best.patterns))
      best = share
  })
  return best === before ? undefined : best
}

/** Lengths that cost nothing and aren't taken yet, as lines with nothing cut: a piece of the rack may spare a longer one. */
function freeLines({ work, lines }: Tidying): Line[] {
  const counts = new Array<number>(work.parts.length).fill(0)
  return work.kinds.flatMap(({ pence, most }, kind) => {
    const taken = lines.reduce((sum, line) => sum + (line.kind === kind ? line.times : 0), 0)
    return pence === 0 && most > taken ? [{ kind, counts, times: most - taken }] : []
  })
}

/** The first pair of lines whose parts are better shared anew, so shared; false when none was found. */
function sharePairs(tidying: Tidying): boolean {
  const { lines } = tidying
  const keys = new Set(lines.map(keyOf))
  const free = freeLines(tidying)
  for (const [at, a] of lines.entries())
    for (const b of [...lines.slice(at), ...free]) {
      const pair = pairOf(a, b)
      if (tidying.ways > mostWays || tidying.stop()) return false
      const better = pair.often > 0 ? betterShare(tidying, pair, keys) : undefined
      if (!better) continue
      a.times -= pair.often
      b.times -= pair.often
      const first = { kind: a.kind, counts: better.first, times: pair.often }
      const second = { kind: b.kind, counts: better.second, times: pair.often }
      tidying.lines = gathered([...lines, first, second])
      return true
    }
  return false
}

/**
 * The same money, less waste, then fewer patterns, as far as moving lengths to others of their price and sharing two lengths' parts anew finds
 * them: a cheap improvement, not the least there is. stop ends it with what it has.
 */
export function tidied(work: SectionWork, lines: readonly Line[], stop: () => boolean): Line[] {
  const tidying: Tidying = { work, lines: gathered(lines), ways: 0, stop }
  for (let better = true; better && tidying.ways <= mostWays;) {
    const changed = changeKinds(tidying)
    better = sharePairs(tidying) || changed
  }
  return tidying.lines
}
