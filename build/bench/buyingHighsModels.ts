import type { BuyRequest } from '../../shared/cutting/buyingPlan/request.ts'

/** A request without rack or limits as whole numbers: sizes with their kerf, longest first, and rooms. */
type Task = { sizes: number[]; demand: number[]; stocks: { room: number; pence: number }[] }

function taskOf({ parts, stock, kerf, endTrim }: BuyRequest): Task {
  const demand = new Map<number, number>()
  for (const { length, quantity } of parts)
    demand.set(length + kerf, (demand.get(length + kerf) ?? 0) + quantity)
  const sizes = [...demand.keys()].sort((a, b) => b - a)
  return {
    sizes,
    demand: sizes.map((size) => demand.get(size) ?? 0),
    stocks: stock.map(({ length, pence }) => ({ room: length - endTrim + kerf, pence })),
  }
}

const lp = (
  cost: string,
  rows: string[],
  { integers, bounds = [] }: { integers: string[]; bounds?: string[] },
) =>
  `Minimize\n cost: ${cost}\nSubject To\n ${rows.join('\n ')}\n${bounds.length > 0 ? `Bounds\n ${bounds.join('\n ')}\n` : ''}Generals\n ${integers.join(' ')}\nEnd\n`

/** Every pattern to which no further wanted part can be added, handed on one by one. */
function fullPatterns({ sizes, demand }: Task, room: number, take: (counts: number[]) => void): void {
  const counts = sizes.map(() => 0)
  const choose = (part: number, left: number): void => {
    const size = sizes[part]
    if (size === undefined) {
      if (sizes.every((one, at) => one > left || counts[at] === demand[at])) take(counts.slice())
      return
    }
    for (let count = 0; count * size <= left && count <= (demand[part] ?? 0); count += 1) {
      counts[part] = count
      choose(part + 1, left - count * size)
    }
    counts[part] = 0
  }
  choose(0, room)
}

/** One whole variable for every full pattern, in the LP text format. */
export function patternModel(request: BuyRequest): string {
  const task = taskOf(request)
  const costs: string[] = []
  const covers: string[][] = task.sizes.map(() => [])
  const names: string[] = []
  for (const { room, pence } of task.stocks)
    fullPatterns(task, room, (counts) => {
      if (!counts.some((count) => count > 0)) return
      const name = `x${names.length}`
      names.push(name)
      costs.push(`${pence} ${name}`)
      counts.forEach((count, part) => count > 0 && covers[part]?.push(`${count} ${name}`))
    })
  const rows = covers.map((terms, part) => `p${part}: ${terms.join(' + ')} >= ${task.demand[part]}`)
  return lp(costs.join(' + '), rows, { integers: names })
}

/** Places that parts laid longest first can reach, and the parts laid from each. */
function arcsOf({ sizes, demand, stocks }: Task): { from: number; part: number }[] {
  const longest = Math.max(...stocks.map(({ room }) => room))
  const reached = new Set([0])
  const arcs = new Map<string, { from: number; part: number }>()
  sizes.forEach((size, part) => {
    let ends = [...reached]
    for (let copy = 0; copy < (demand[part] ?? 0) && ends.length > 0; copy += 1) {
      const next: number[] = []
      for (const from of ends) {
        if (from + size > longest) continue
        arcs.set(`${from}:${part}`, { from, part })
        next.push(from + size)
      }
      for (const place of next) reached.add(place)
      ends = next
    }
  })
  return [...arcs.values()]
}

/** A flow of parts along each stock length: an arc for a part laid at a place, and for a length left over (J. M. Valério de Carvalho, 1999). */
export function flowModel(request: BuyRequest): string {
  const task = taskOf(request)
  const arcs = arcsOf(task)
  const rooms = [...new Set(task.stocks.map(({ room }) => room))]
  const places = [
    ...new Set([0, ...rooms, ...arcs.flatMap(({ from, part }) => [from, from + (task.sizes[part] ?? 0)])]),
  ].sort((a, b) => a - b)
  const balance = new Map<number, string[]>(places.map((place) => [place, []]))
  const covers: string[][] = task.sizes.map(() => [])
  const names: string[] = []
  const flow = (name: string, from: number, to: number) => {
    names.push(name)
    balance.get(from)?.push(`- ${name}`)
    balance.get(to)?.push(`+ ${name}`)
  }
  for (const { from, part } of arcs) {
    flow(`a${from}_${part}`, from, from + (task.sizes[part] ?? 0))
    covers[part]?.push(`a${from}_${part}`)
  }
  places.slice(1).forEach((place, at) => flow(`l${place}`, places[at] ?? 0, place))
  task.stocks.forEach(({ room }, stock) => flow(`z${stock}`, room, 0))
  const rows = [
    ...places.map((place) => `n${place}: ${balance.get(place)?.join(' ')} = 0`),
    ...covers.map((terms, part) => `p${part}: ${terms.join(' + ')} >= ${task.demand[part]}`),
  ]
  const cost = task.stocks.map(({ pence }, stock) => `${pence} z${stock}`).join(' + ')
  return lp(cost, rows, { integers: names })
}
