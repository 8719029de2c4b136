/** A line through a year on a strip of paper: where each month's value comes, and the values to write at its highest and lowest. */
export type YearLine = {
  points: { x: number; y: number }[]
  path: string
  highest: { month: number; value: number }
  lowest: { month: number; value: number }
}

/** The strip's size and the room to leave for figures above and below the line, in the units of the picture. */
export type Strip = { width: number; height: number; room: number }

/** Twelve values, January first, as a line that fills the strip; a level line where nothing changes. Undefined without a value. */
export function yearLine(values: readonly number[], { width, height, room }: Strip): YearLine | undefined {
  if (values.length === 0) return undefined
  const [least, most] = [Math.min(...values), Math.max(...values)]
  const span = most - least
  const step = width / values.length
  const points = values.map((value, month) => ({
    x: step * (month + 0.5),
    y: span > 1e-9 ? room + ((most - value) / span) * (height - 2 * room) : height / 2,
  }))
  return {
    points,
    path: points.map(({ x, y }, i) => `${i === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`).join(' '),
    highest: { month: values.indexOf(most), value: most },
    lowest: { month: values.indexOf(least), value: least },
  }
}
