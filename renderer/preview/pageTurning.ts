import type { PageSize } from './openPaper.ts'

/** How large a page is shown: all of it, or as wide as there is room for. */
export type Zoom = 'whole' | 'width'

/** Air round a page, and the width of a scroll bar, in pixels. */
const air = 12
const widest = 1400

/** How wide a page is drawn in its room, in pixels of the screen: never wider than can be read without turning the head. */
export function drawnWidth(
  { width, height }: PageSize,
  room: { width: number; height: number },
  zoom: Zoom,
): number {
  const across = Math.min(Math.max(room.width - 2 * air, 120), widest)
  const down = Math.max(room.height - 2 * air, 120)
  const whole = Math.min(across, (down * width) / height)
  return Math.floor(zoom === 'whole' ? whole : Math.max(across, whole))
}

/** Where a page lies in its window: pixels above it, its height, and what is seen of it. */
type Scroll = { scrollTop: number; scrollHeight: number; clientHeight: number }

const turns: Readonly<
  Record<string, (at: { page: number; pages: number; scroll: Scroll }) => number | undefined>
> = {
  ArrowRight: ({ page }) => page + 1,
  ArrowLeft: ({ page }) => page - 1,
  Home: () => 1,
  End: ({ pages }) => pages,
  // A page wider than the room is scrolled through first.
  PageDown: ({ page, scroll }) =>
    scroll.scrollTop + scroll.clientHeight < scroll.scrollHeight - 1 ? undefined : page + 1,
  PageUp: ({ page, scroll }) => (scroll.scrollTop > 1 ? undefined : page - 1),
}

/** The page a key turns to, which may be one before the first or after the last; undefined where the key turns none. */
export const turned = (
  key: string,
  at: { page: number; pages: number; scroll: Scroll },
): number | undefined => turns[key]?.(at)
