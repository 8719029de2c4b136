import type { Leaf } from '../gate/leaf.ts'

/** A line a hinge can stand on: a ledge's centre line, or a framed gate's top rail's. Lower and upper edges beside it, mm from the foot. */
export type HingeLine = { name: string; y: number; lower: number; upper: number }

/** Least y of an outline: a top rail's lower edge is level whatever its upper edge does. */
const lowestOf = (points: Leaf['frame'][number]['outline']): number => Math.min(...points.map(([, y]) => y))

/** The lines of one leaf that hinges can stand on, bottom up: its ledges and, on a framed leaf, the top rail. */
export function hingeLines({ ledges, frame }: Pick<Leaf, 'ledges' | 'frame'>): HingeLine[] {
  const lines = ledges.map(({ name, y, section }) => ({
    name: `${name} ledge`,
    y,
    lower: y - section.width / 2,
    upper: y + section.width / 2,
  }))
  for (const rail of frame.filter((part) => part.name === 'top rail')) {
    const lower = lowestOf(rail.outline)
    const { width } = rail.section
    lines.push({ name: 'top rail', y: lower + width / 2, lower, upper: lower + width })
  }
  return lines
}

/** A hinge's height and the line it stands on; line null where it stands between lines. */
export type HingePlace = { y: number; line: HingeLine | null }

/** The line that a height falls within, or null. */
export const lineAt = (lines: readonly HingeLine[], y: number): HingeLine | null =>
  lines.find(({ lower, upper }) => y >= lower && y <= upper) ?? null

/**
 * Where a number of hinges stand on a leaf, bottom up, when no heights are given: one on the top line, two on the bottom and top lines,
 * three with the middle line too where there is one. Any that no line is left for are spaced evenly between, on no line.
 */
export function standardHingePlaces(leaf: Pick<Leaf, 'ledges' | 'frame'>, count: number): HingePlace[] {
  const lines = hingeLines(leaf)
  const [bottom, top] = [lines[0], lines.at(-1)]
  if (!bottom || !top || count < 1) return []
  if (count === 1 || bottom === top) return [{ y: top.y, line: top }]
  return Array.from({ length: count }, (_, index): HingePlace => {
    if (index === 0) return { y: bottom.y, line: bottom }
    if (index === count - 1) return { y: top.y, line: top }
    const middle = lines[1]
    if (count === 3 && lines.length === 3 && middle) return { y: middle.y, line: middle }
    const y = bottom.y + ((top.y - bottom.y) * index) / (count - 1)
    return { y, line: lineAt(lines, y) }
  })
}
