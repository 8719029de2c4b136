/** One solver's measurements: part lengths, ms, and whether it ended by itself within the limit. */
export type Series = {
  name: string
  colour: string
  points: { count: number; ms: number; ended: boolean }[]
}

const page = { width: 760, height: 500, left: 86, right: 24, top: 78, bottom: 64 }
const [ink, faint] = ['#26302f', '#d8d4c8']
const span = { counts: [3.5, 230] as const, ms: [0.3, 25_000] as const }

/** A place along an axis whose every tenfold is as long. */
const along = (
  value: number,
  [low, high]: readonly [number, number],
  [from, to]: readonly [number, number],
) => from + (Math.log(value / low) / Math.log(high / low)) * (to - from)

const x = (count: number): number => along(count, span.counts, [page.left, page.width - page.right])
const y = (ms: number): number => along(ms, span.ms, [page.height - page.bottom, page.top])
const at = (value: number): string => value.toFixed(1)

type Words = { anchor?: 'start' | 'middle' | 'end'; size?: number; fill?: string; weight?: number }

const words = (text: string, [left, top]: readonly [number, number], style: Words = {}): string => {
  const { anchor = 'start', size = 13, fill = ink, weight = 400 } = style
  return `<text x="${at(left)}" y="${at(top)}" font-size="${size}" font-weight="${weight}" text-anchor="${anchor}" fill="${fill}">${text}</text>`
}

const line = (from: readonly [number, number], to: readonly [number, number], style: string): string =>
  `<line x1="${at(from[0])}" y1="${at(from[1])}" x2="${at(to[0])}" y2="${at(to[1])}" ${style}/>`

const timeWords = (ms: number): string => (ms < 1000 ? `${ms} ms` : `${ms / 1000} s`)

function axes(limitMs: number): string[] {
  const [left, right, bottom] = [page.left, page.width - page.right, page.height - page.bottom]
  const rule = `stroke="${faint}"`
  return [
    ...[1, 10, 100, 1000, 10_000].flatMap((ms) => [
      line([left, y(ms)], [right, y(ms)], rule),
      words(timeWords(ms), [left - 10, y(ms) + 4], { anchor: 'end' }),
    ]),
    ...[4, 8, 16, 32, 64, 128, 200].flatMap((count) => [
      line([x(count), page.top], [x(count), bottom], rule),
      words(String(count), [x(count), bottom + 20], { anchor: 'middle' }),
    ]),
    line([left, bottom], [right, bottom], `stroke="${ink}"`),
    line([left, y(limitMs)], [right, y(limitMs)], `stroke="${ink}" stroke-dasharray="5 4"`),
    words(`limit ${timeWords(limitMs)}: not proven by then`, [left + 8, y(limitMs) - 7], { size: 12 }),
    words('different part lengths, four pieces of each', [(left + right) / 2, bottom + 46], {
      anchor: 'middle',
    }),
  ]
}

/** The middle of each number's measurements as a line, each measurement a dot, hollow where the limit ended it. */
function drawn({ colour, points }: Series): string[] {
  const counts = [...new Set(points.map(({ count }) => count))]
  const middles = counts.map((count) => {
    const times = points.filter((one) => one.count === count).map(({ ms }) => ms)
    const sorted = times.sort((a, b) => a - b)
    return `${at(x(count))},${at(y(sorted[(sorted.length - 1) >> 1] ?? 1))}`
  })
  return [
    `<polyline points="${middles.join(' ')}" fill="none" stroke="${colour}" stroke-width="2.5" stroke-linejoin="round"/>`,
    ...points.map(
      ({ count, ms, ended }) =>
        `<circle cx="${at(x(count))}" cy="${at(y(ms))}" r="3.2" stroke="${colour}" stroke-width="1.4" fill="${ended ? colour : '#fff'}"/>`,
    ),
  ]
}

/** Time to a proven plan against the number of part lengths, both axes by powers, as an SVG picture. */
export function growthPlot(
  all: readonly Series[],
  { limitMs, requests }: { limitMs: number; requests: number },
): string {
  const { width, height } = page
  const keys = all.flatMap(({ name, colour }, index) => {
    const left = page.left + index * 190
    return [
      line([left, 57], [left + 26, 57], `stroke="${colour}" stroke-width="2.5"`),
      words(name, [left + 34, 61]),
    ]
  })
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" font-family="IBM Plex Sans, DejaVu Sans, sans-serif">`,
    `<rect width="${width}" height="${height}" fill="#fff"/>`,
    words(
      `Time to a proven buying plan; ${requests} requests each, line through their medians`,
      [page.left, 30],
      { size: 15, weight: 600 },
    ),
    ...keys,
    ...axes(limitMs),
    ...all.flatMap((series) => drawn(series)),
    '</svg>\n',
  ].join('\n')
}
