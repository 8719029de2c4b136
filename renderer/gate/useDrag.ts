import { onBeforeUnmount } from 'vue'
import type { Hold } from '../../shared/drawing/holds.ts'
import type { useMovingStore } from '../stores/moving.ts'

type Place = { x: number; y: number }

/** How far a pointer goes before a press becomes a drag, pixels: a finger is less sure than a mouse. */
const slack = (kind: string): number => (kind === 'mouse' ? 3 : 8)

/** What a drag is told: where the parts move, how much a way on the screen changes a value, and that one begins. */
type Dragging = {
  moves: ReturnType<typeof useMovingStore>
  mmOf: (hold: Hold, from: Place, to: Place) => number
  takes: (hold: Hold) => void
}

/** A press on its way: the pointer, where it began, and whether it has become a drag. */
type Press = { hold: Hold; pointer: number; from: Place; frame: Element | null; going: boolean }

/** Whether something takes the part out of the hand: Esc, another finger, or the system wanting the pointer. */
const takesAway = (event: KeyboardEvent | PointerEvent, pointer: number): boolean =>
  event instanceof PointerEvent
    ? event.type === 'pointercancel' || event.pointerId !== pointer
    : event.key === 'Escape'

function begin(press: Press, { moves, takes }: Dragging): boolean {
  if (!moves.take(press.hold)) return false
  press.going = true
  press.frame?.setPointerCapture(press.pointer)
  takes(press.hold)
  return true
}

/** The listeners of one press, till it ends. ended is told whether it had become a drag. */
function follow(press: Press, dragging: Dragging, ended: (went: boolean) => void): () => void {
  const { moves, mmOf } = dragging
  const listening = new AbortController()
  const end = () => {
    listening.abort()
    ended(press.going)
  }
  const move = (event: PointerEvent) => {
    if (event.pointerId !== press.pointer) return
    const to = { x: event.clientX, y: event.clientY }
    const far = Math.hypot(to.x - press.from.x, to.y - press.from.y)
    if (!press.going && far < slack(event.pointerType)) return
    if (!press.going && !begin(press, dragging)) return end()
    moves.to(press.hold.value + mmOf(press.hold, press.from, to))
  }
  const up = (event: PointerEvent) => {
    if (event.pointerId !== press.pointer) return
    if (press.going) moves.letGo()
    end()
  }
  const back = (event: KeyboardEvent | PointerEvent) => {
    if (!takesAway(event, press.pointer)) return
    if (press.going) {
      moves.putBack(press.hold)
      event.preventDefault()
      event.stopPropagation()
    }
    end()
  }
  const { signal } = listening
  // Words marked under the way would be taken along in place of the part.
  const never = (event: Event) => event.preventDefault()
  window.addEventListener('selectstart', never, { signal })
  window.addEventListener('dragstart', never, { signal })
  window.addEventListener('pointermove', move, { signal })
  window.addEventListener('pointerup', up, { signal })
  window.addEventListener('pointercancel', back, { signal, capture: true })
  window.addEventListener('pointerdown', back, { signal, capture: true })
  window.addEventListener('keydown', back, { signal, capture: true })
  return end
}

/**
 * A hold taken by mouse, pen or finger and drawn along. Esc, a second finger or the system taking the pointer away puts the part back. dragged:
 * whether a drag has just ended, so that the click that ends it isn't taken for a press.
 */
export function useDrag(dragging: Dragging) {
  const state = { end: null as (() => void) | null, just: false }
  function press(hold: Hold, event: PointerEvent) {
    if (event.button !== 0 || state.end) return
    const frame = event.target instanceof Element ? event.target.closest('.gate-drawing') : null
    const from = { x: event.clientX, y: event.clientY }
    state.end = follow({ hold, pointer: event.pointerId, from, frame, going: false }, dragging, (went) => {
      state.end = null
      state.just = went
      setTimeout(() => (state.just = false), 0)
    })
  }
  onBeforeUnmount(() => state.end?.())
  return { press, dragged: (): boolean => state.just }
}
