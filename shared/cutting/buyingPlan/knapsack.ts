import type { CuttingProblem, Pattern } from './cuttingProblem.ts'
import { inRoomOf, reals, wholes } from './lists.ts'

/** A part taken a power of two times at once: with all of its chunks any number up to its demand can be made. */
type Chunk = { part: number; copies: number; size: number }

/** The table behind pricing: best value for every room from 0 to the longest, and which chunks were taken on the way. */
export type Knapsack = {
  parts: number
  cells: number
  chunks: Chunk[]
  best: Float64Array<ArrayBuffer>
  taken: Uint8Array<ArrayBuffer>
  /** The largest room that the chunks up to each one can fill. */
  reaches: Int32Array
}

function chunksOf({ parts }: CuttingProblem, room: number): Chunk[] {
  return parts.flatMap(({ size, demand }, part) => {
    const chunks: Chunk[] = []
    let left = Math.min(demand, Math.floor(room / size))
    for (let copies = 1; left > 0; copies *= 2) {
      const now = Math.min(copies, left)
      chunks.push({ part, copies: now, size: now * size })
      left -= now
    }
    return chunks
  })
}

/** An empty table for a problem: memory is (longest room + 1) × (8 + number of chunks) bytes, that of a table no longer used where it is enough. */
export function makeKnapsack(problem: CuttingProblem, old?: Knapsack): Knapsack {
  const room = Math.max(0, ...problem.stocks.map((stock) => stock.room))
  const cells = room + 1
  const chunks = chunksOf(problem, room)
  const size = cells * chunks.length
  return {
    parts: problem.parts.length,
    cells,
    chunks,
    best: inRoomOf(old?.best ?? reals(0), cells),
    taken:
      old && old.taken.buffer.byteLength >= size
        ? new Uint8Array(old.taken.buffer, 0, size).fill(0)
        : new Uint8Array(size),
    reaches: wholes(chunks.length),
  }
}

/**
 * Fills the table for one value a part (0 or more): best[room] is then the most that any pattern within that room is worth. With whole
 * values it is exact. Gives how many cells were worked, as a measure of effort.
 */
export function fillKnapsack(table: Knapsack, values: ArrayLike<number>): number {
  const { best, taken, cells, chunks, reaches } = table
  best.fill(0)
  let reach = 0
  let worked = 0
  for (let chunk = 0; chunk < chunks.length; chunk += 1) {
    const { part, copies, size } = chunks[chunk] as Chunk
    const value = (values[part] as number) * copies
    const offset = chunk * cells
    if (!(value > 0)) {
      taken.fill(0, offset, offset + cells)
      reaches[chunk] = reach
      continue
    }
    const top = Math.min(cells - 1, reach + size)
    for (let room = reach + 1; room <= top; room += 1) best[room] = best[reach] as number
    for (let room = top; room >= size; room -= 1) {
      const worth = (best[room - size] as number) + value
      const better = worth > (best[room] as number)
      if (better) best[room] = worth
      taken[offset + room] = better ? 1 : 0
    }
    worked += top
    reach = top
    reaches[chunk] = top
  }
  for (let room = reach + 1; room < cells; room += 1) best[room] = best[reach] as number
  return worked
}

/** The pattern behind best[room] of the table as last filled. */
export function patternAt({ taken, cells, chunks, parts, best, reaches }: Knapsack, room: number): Pattern {
  const counts = new Array<number>(parts).fill(0)
  let left = Math.min(room, cells - 1)
  while (left > 0 && best[left] === best[left - 1]) left -= 1
  for (let chunk = chunks.length - 1; chunk >= 0; chunk -= 1) {
    left = Math.min(left, reaches[chunk] as number)
    if (taken[chunk * cells + left] !== 1) continue
    const { part, copies, size } = chunks[chunk] as Chunk
    counts[part] = (counts[part] as number) + copies
    left -= size
  }
  return counts
}
