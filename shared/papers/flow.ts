import type { PageMark } from './page.ts'

/**
 * A piece of a paper that stays in one piece: its height in mm, the space it wants above it (not at the head of a page), and its marks once
 * its top left corner is known. withNext keeps it on the page of the block after it.
 */
export type Block = {
  height: number
  above?: number
  withNext?: boolean
  again?: Block
  marks: (x: number, y: number) => PageMark[]
}

/** The part of a page that blocks may fill, mm. */
export type Frame = { x: number; top: number; bottom: number }

/** Groups of blocks that must share a page. */
function groups(blocks: Block[]): Block[][] {
  const out: Block[][] = []
  let open = false
  for (const block of blocks) {
    if (open) out.at(-1)?.push(block)
    else out.push([block])
    open = block.withNext === true
  }
  return out
}

const heightOf = (group: Block[], first: boolean): number =>
  group.reduce((sum, block, i) => sum + block.height + (first && i === 0 ? 0 : (block.above ?? 0)), 0)

/** Where a block comes: its page, counted from 0, and its top, mm. */
type Place = { block: Block; page: number; x: number; y: number }

/** The place of every block down the pages, beginning a new page when the next group has no room. A group higher than a page is parted. */
function places(blocks: Block[], first: Frame, later: Frame): Place[] {
  const out: Place[] = []
  let page = 0
  let frame = first
  let y = frame.top
  const turn = (needed: (atTop: boolean) => number): void => {
    const crowded = y + needed(y === frame.top) > frame.bottom
    if (!crowded || (y === frame.top && frame !== first)) return
    page += 1
    frame = later
    y = frame.top
  }
  for (const group of groups(blocks)) {
    turn((atTop) => heightOf(group, atTop))
    const tall = heightOf(group, true) > later.bottom - later.top
    for (const block of group) {
      const { again } = block
      if (tall) turn((atTop) => heightOf([block], atTop))
      if (y > frame.top) y += block.above ?? 0
      else if (again && page > 0) {
        out.push({ block: again, page, x: frame.x, y })
        y += again.height
      }
      out.push({ block, page, x: frame.x, y })
      y += block.height
    }
  }
  return out
}

/**
 * Lays blocks down the pages, beginning a new one when the next group has no room. first is what the first page leaves free, frame what
 * every later one does. Gives the marks of each page.
 */
export function flow(blocks: Block[], first: Frame, later: Frame): PageMark[][] {
  const pages: PageMark[][] = [[]]
  for (const { block, page, x, y } of places(blocks, first, later)) {
    const marks = block.marks(x, y)
    const known = pages[page]
    if (known) known.push(...marks)
    else pages[page] = marks
  }
  return pages
}

/** How far down the pages blocks reach: whole pages begun before, and the share of the last one, mm. */
function reach(blocks: Block[], first: Frame, later: Frame): { page: number; y: number } {
  const last = places(blocks, first, later).at(-1)
  return last ? { page: last.page, y: last.y + last.block.height } : { page: 0, y: first.top }
}

/**
 * Parts in an order that leaves little paper blank: where the next one has no room on the page, a later one that has is brought forward.
 * after is what they follow; each part stays in one piece as it is.
 */
export function closelyPacked(
  parts: Block[][],
  after: Block[],
  frames: { first: Frame; later: Frame },
): Block[] {
  const end = (blocks: Block[]) => reach(blocks, frames.first, frames.later).page
  const left = parts.filter((part) => part.length > 0)
  const out: Block[] = []
  while (left.length > 0) {
    const page = end([...after, ...out])
    const fits = left.findIndex((part) => end([...after, ...out, ...part]) === page)
    out.push(...(left.splice(Math.max(0, fits), 1)[0] ?? []))
  }
  return out
}

/** Blocks set one under another as a single block, for a column beside another. */
export const stacked = (blocks: Block[]): Block => ({
  height: heightOf(blocks, true),
  marks: (x, y) => {
    const out: PageMark[] = []
    let at = y
    blocks.forEach((block, i) => {
      if (i > 0) at += block.above ?? 0
      out.push(...block.marks(x, at))
      at += block.height
    })
    return out
  },
})

/** Two blocks side by side, the right one starting offset mm further on. */
export const sideBySide = (left: Block, right: Block, offset: number): Block => ({
  height: Math.max(left.height, right.height),
  above: 4.6,
  marks: (x, y) => [...left.marks(x, y), ...right.marks(x + offset, y)],
})
