import type { PageMark } from './page.ts'

/**
 * A piece of a paper that stays in one piece: its height in mm, the space it wants above it (not at the head of a page), and its marks once
 * its top left corner is known. withNext keeps it on the page of the block after it.
 */
export type Block = {
  height: number
  above?: number
  withNext?: boolean
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

/**
 * Lays blocks down the pages, beginning a new one when the next group has no room. first is what the first page leaves free, frame what
 * every later one does. Gives the marks of each page.
 */
export function flow(blocks: Block[], first: Frame, later: Frame): PageMark[][] {
  const pages: PageMark[][] = [[]]
  let frame = first
  let y = frame.top
  for (const group of groups(blocks)) {
    const crowded = y + heightOf(group, y === frame.top) > frame.bottom
    if (crowded && (y > frame.top || frame === first)) {
      pages.push([])
      frame = later
      y = frame.top
    }
    for (const block of group) {
      if (y > frame.top) y += block.above ?? 0
      pages.at(-1)?.push(...block.marks(frame.x, y))
      y += block.height
    }
  }
  return pages
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
