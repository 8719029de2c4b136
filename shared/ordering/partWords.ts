/** The longest that a part is told; a mark of two parts and their jobs then stays under 200 characters. */
const longestTold = 80

type Run = { stem: string; from: number; to: number }

const numbered = /^(.*) (\d+)$/

function runsOf(marks: readonly string[]): (Run | string)[] {
  const runs: (Run | string)[] = []
  for (const mark of marks) {
    const [, stem, place] = numbered.exec(mark) ?? []
    const last = runs.at(-1)
    if (stem === undefined) runs.push(mark)
    else if (typeof last === 'object' && last.stem === stem && last.to + 1 === Number(place)) last.to += 1
    else runs.push({ stem, from: Number(place), to: Number(place) })
  }
  return runs
}

const placesOf = ({ from, to }: Run): string =>
  from === to ? `${from}` : to === from + 1 ? `${from}, ${to}` : `${from}–${to}`

/** Runs of one kind behind each other say what they are once. */
function told(runs: (Run | string)[]): string[] {
  const words: string[] = []
  for (const [place, run] of runs.entries()) {
    const before = runs[place - 1]
    if (typeof run === 'string') words.push(run)
    else if (typeof before === 'object' && before.stem === run.stem) words.push(placesOf(run))
    else {
      const next = runs[place + 1]
      const several = run.to > run.from || (typeof next === 'object' && next.stem === run.stem)
      words.push(`${run.stem}${several ? 's' : ''} ${placesOf(run)}`)
    }
  }
  return words
}

/**
 * A part of the cut list as short as it goes, for a mark at the saw: 'board 1, board 2, board 3, board 7' is 'boards 1–3, 7'. One that stays
 * over 80 characters is cut short.
 */
export function partWords(part: string): string {
  const words = told(runsOf(part.split(', '))).join(', ')
  return words.length <= longestTold ? words : `${words.slice(0, longestTold - 1)}…`
}
