import type { Point } from '../../geometry/point.ts'
import { mmOfPoint, type Measure, type PageMark } from '../page.ts'
import { clipLine } from './clipLine.ts'
import type { Extent, TemplateMark, TemplateText } from './template.ts'

const weightOf = ({ weight = 'regular' }: TemplateText) => weight

/** Room under words for their tails, and for the line that they stand on, mm. */
const below = 1.9

/** The box that words take up, mm. */
function wordsBox(mark: TemplateText, measure: Measure): Extent {
  const long = measure(mark.text, mark.size, weightOf(mark))
  const high = mark.size * mmOfPoint * 0.75
  const back = { start: 0, middle: long / 2, end: long }[mark.anchor ?? 'start']
  const [x, y] = mark.at
  return mark.angle === 90
    ? { minX: x - high, maxX: x + 0.8, minY: y - back, maxY: y - back + long }
    : { minX: x - back, maxX: x - back + long, minY: y - below, maxY: y + high }
}

const inside = (inner: Extent, outer: Extent): boolean =>
  inner.minX >= outer.minX && inner.maxX <= outer.maxX && inner.minY >= outer.minY && inner.maxY <= outer.maxY

/** Where a place of a template comes on its sheet. */
export type OnSheet = (at: Point) => Point

/** The marks of a template that a view shows, as they lie on its sheet. */
export function shownIn(
  marks: readonly TemplateMark[],
  { view, onSheet }: { view: Extent; onSheet: OnSheet },
  measure: Measure,
): PageMark[] {
  return marks.flatMap((mark): PageMark[] => {
    if (mark.kind === 'text') {
      if (!inside(wordsBox(mark, measure), view)) return []
      const [x, y] = onSheet(mark.at)
      const { text, size, anchor = 'start', angle } = mark
      return [
        {
          kind: 'text',
          x,
          y,
          text,
          size,
          weight: weightOf(mark),
          ink: 'black',
          anchor,
          ...(angle ? { angle } : {}),
        },
      ]
    }
    const { width, ink = 'black', dash, closed } = mark
    const look = { kind: 'path' as const, width, ink, ...(dash ? { dash } : {}) }
    const whole = mark.points.every(([x, y]) => inside({ minX: x, maxX: x, minY: y, maxY: y }, view))
    if (whole) return [{ ...look, points: mark.points.map(onSheet), closed: closed ?? false }]
    const [first] = mark.points
    const round = closed && first ? [...mark.points, first] : mark.points
    return clipLine(round, view).map((points) => ({ ...look, points: points.map(onSheet), closed: false }))
  })
}
