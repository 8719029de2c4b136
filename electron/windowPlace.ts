/** A piece of the desktop, in the screen's own points, y downwards. */
export type Area = { x: number; y: number; width: number; height: number }

/** Where the window stood when it was last closed. */
export type WindowPlace = Area & { maximised: boolean }

/** The smallest window the screens can be worked in. */
export const leastSize = { width: 900, height: 560 }

/** The window of a first start. */
const firstSize = { width: 1360, height: 860 }

const overlap = (one: Area, other: Area): number => {
  const across = Math.min(one.x + one.width, other.x + other.width) - Math.max(one.x, other.x)
  const down = Math.min(one.y + one.height, other.y + other.height) - Math.max(one.y, other.y)
  return Math.max(0, across) * Math.max(0, down)
}

/** Along one side of a display: where it begins, its length, and the window's length. */
type Side = { from: number; length: number; piece: number }

const middle = ({ from, length, piece }: Side): number => from + Math.max(0, Math.round((length - piece) / 2))

const within = (at: number, { from, length, piece }: Side): number =>
  Math.max(from, Math.min(at, from + length - piece))

/**
 * Where the window opens: where it last stood, moved and made smaller so that all of it lies on the display it mostly
 * stood on; in the middle of the first display where it never stood anywhere, or its display is gone. areas are the
 * displays' working areas, the first one first. A display smaller than the least window shows the window's top left.
 * { x: 1500, … 1000 wide } on displays { 0 … 1366 } alone comes to the middle of that one.
 */
export const placeOn = (last: WindowPlace | undefined, areas: readonly Area[]): WindowPlace => {
  const [first = { x: 0, y: 0, ...firstSize }] = areas
  const size = { width: last?.width ?? firstSize.width, height: last?.height ?? firstSize.height }
  const stood = last && areas.toSorted((a, b) => overlap(last, b) - overlap(last, a))[0]
  const isThere = last !== undefined && stood !== undefined && overlap(last, stood) > 0
  const area = isThere ? stood : first
  const width = Math.max(leastSize.width, Math.min(size.width, area.width))
  const height = Math.max(leastSize.height, Math.min(size.height, area.height))
  const across = { from: area.x, length: area.width, piece: width }
  const down = { from: area.y, length: area.height, piece: height }
  return {
    x: isThere ? within(last.x, across) : middle(across),
    y: isThere ? within(last.y, down) : middle(down),
    width,
    height,
    maximised: last?.maximised ?? false,
  }
}

const isWhole = (value: unknown): value is number => Number.isSafeInteger(value)

/** Reads a noted place; undefined for anything that isn't one, so that a torn note only costs the window its place. */
export const readPlace = (text: string): WindowPlace | undefined => {
  let noted: unknown
  try {
    noted = JSON.parse(text)
  } catch (error) {
    if (error instanceof SyntaxError) return undefined
    throw error
  }
  if (typeof noted !== 'object' || noted === null) return undefined
  const { x, y, width, height, maximised } = noted as Record<string, unknown>
  if (!isWhole(x) || !isWhole(y) || !isWhole(width) || !isWhole(height)) return undefined
  return width > 0 && height > 0 ? { x, y, width, height, maximised: maximised === true } : undefined
}
