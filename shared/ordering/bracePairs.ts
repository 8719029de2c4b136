import { toRadians } from '../units/angle.ts'
import { isOneCut, type SlantedEnds } from './jobTimber.ts'
import type { BracePair, TaskPart } from './orderModel.ts'
import { upToTenth } from './wholeTenths.ts'

/** Brace blanks of one part of one job that may share a cut with others of the same section and saw setting. */
export type PairableBraces = TaskPart & { slanted: SlantedEnds }

/** Two braces laid end to end: their lengths, long point to long point, mm; kerf mm. */
type EndToEnd = Pick<SlantedEnds, 'width' | 'sawSetting'> & {
  lengths: readonly [number, number]
  kerf: number
}

/**
 * Length of the piece that two braces are cut from, mm, when one slanting cut parts them. Both ends of a flush brace slant alike, so the second's
 * foot lies along the first's head: beside the lengths of both blanks the slant's own reach, width × tan(setting off square), comes in
 * once less, and the kerf once, measured along the board: kerf / cos(setting). Rounded up to a tenth. Two of 1531.5 mm, 120 wide, set 26.99475°
 * off square, with a kerf of 4: 3063 − 61.129 + 4.489 = 3006.4, where two blanks with a square cut between take 3067. A brace of the other
 * hand is the same piece turned over, both faces of it being planed alike.
 */
export function pairLength({ lengths, width, sawSetting, kerf }: EndToEnd): number {
  const slant = toRadians(sawSetting)
  return upToTenth(lengths[0] + lengths[1] - width * Math.tan(slant) + kerf / Math.cos(slant))
}

/** A brace's own length where its blank is said a trifle shorter, so that both outlines are within the piece. */
const wholeLength = ({ length, slanted }: PairableBraces): number => Math.max(length, slanted.longPoints)

type Single = { brace: PairableBraces; place: number }

const isAlike = (a: PairableBraces, b: PairableBraces): boolean =>
  a.key === b.key && isOneCut(a.slanted, b.slanted)

function groupsOf(braces: readonly PairableBraces[]): Single[][] {
  const groups: Single[][] = []
  for (const [place, brace] of braces.entries()) {
    const own = groups.find(([first]) => first && isAlike(first.brace, brace))
    const singles = Array.from({ length: brace.quantity }, () => ({ brace, place }))
    if (own) own.push(...singles)
    else groups.push(singles)
  }
  return groups
}

type Fits = (a: Single, b: Single) => boolean
type Matched = { pairs: [Single, Single][]; left: Single[] }

/** As many pairs as fit: the shortest with the longest that it still fits beside; what fits with no shortest fits with none. */
function matched(singles: readonly Single[], fits: Fits): Matched {
  const sorted = [...singles].sort((a, b) => wholeLength(a.brace) - wholeLength(b.brace) || a.place - b.place)
  const pairs: [Single, Single][] = []
  const left: Single[] = []
  while (sorted.length > 0) {
    const longest = sorted.pop() as Single
    const shortest = sorted[0]
    if (shortest && fits(shortest, longest)) pairs.push([sorted.shift() as Single, longest])
    else left.push(longest)
  }
  return { pairs, left }
}

/** Pairs within a job before pairs across jobs, where that makes no fewer of them. */
function bestMatched(singles: readonly Single[], fits: Fits): [Single, Single][] {
  const jobs = [...new Set(singles.map(({ brace }) => brace.jobId))]
  const within = jobs.map((job) =>
    matched(
      singles.filter(({ brace }) => brace.jobId === job),
      fits,
    ),
  )
  const across = matched(
    within.flatMap(({ left }) => left),
    fits,
  )
  const homely = [...within.flatMap(({ pairs }) => pairs), ...across.pairs]
  const most = matched(singles, fits).pairs
  return homely.length >= most.length ? homely : most
}

function markOfPair(first: TaskPart, second: TaskPart): string {
  const other = first.jobId === second.jobId ? second.part : second.mark
  return `${first.mark} + ${other}`
}

/**
 * Braces two and two, as many as can be: of one section and saw setting, where the shared cut spares timber and both together are no longer than
 * the longest that can be had of their section. A pair of one job comes before one of two.
 */
export function bracePairs(
  braces: readonly PairableBraces[],
  { kerf, longest }: { kerf: number; longest: (key: string) => number },
): BracePair[] {
  const laid = (a: PairableBraces, b: PairableBraces): { length: number; saved: number } => {
    const length = pairLength({ ...a.slanted, lengths: [wholeLength(a), wholeLength(b)], kerf })
    return { length, saved: Math.round((a.length + b.length + kerf - length) * 10) / 10 }
  }
  const fits: Fits = (a, b) => {
    const { length, saved } = laid(a.brace, b.brace)
    return saved > 0 && length <= longest(a.brace.key)
  }
  return groupsOf(braces).flatMap((group) =>
    bestMatched(group, fits).map((pair): BracePair => {
      const [{ brace: first }, { brace: second }] = pair[0].place <= pair[1].place ? pair : [pair[1], pair[0]]
      const mark = markOfPair(first, second)
      const of: BracePair['of'] = [first.mark, second.mark]
      const lengths: BracePair['lengths'] = [first.length, second.length]
      return { key: first.key, mark, of, lengths, ...laid(first, second) }
    }),
  )
}
