import { takeHand, unfold } from '../takeHand.ts'

/**
 * Where a command leads on the screen it goes to, as selectors. press: pressed once it is there; to: takes the hand; instead: takes it where there
 * turns out to be nothing to press. Of each the first that can be seen and pressed counts.
 */
export type Lead = { press?: string; to?: string; instead?: string }

const everyMs = 30
/** A screen's file may have to be fetched first. */
const patienceMs = 6000
/** A screen that has something to press shows it by then. */
const insteadMs = 1500
/** A screen that is still settling may make anew what already has the hand. */
const settleMs = 600

/** The first element of that kind that could be pressed or typed in; what lies folded away counts, and is unfolded. */
function reachable(selector: string): HTMLElement | undefined {
  return [...document.querySelectorAll<HTMLElement>(selector)].find((element) => {
    if (element.matches(':disabled')) return false
    unfold(element)
    return element.getClientRects().length > 0
  })
}

/**
 * Waits until what a command leads to is on the screen, presses it or puts the hand on it, and keeps the hand there until the screen has
 * settled or the person does something. ready says whether the screen shows what was asked for. Gives how to stop waiting.
 */
export function leadTo({ press, to, instead }: Lead, ready: () => boolean): () => void {
  const began = performance.now()
  const held: { pressed: boolean; at?: number } = { pressed: press === undefined }
  const stop = () => {
    clearInterval(timer)
    window.removeEventListener('pointerdown', stop, true)
    window.removeEventListener('keydown', act, true)
  }
  const act = () => {
    if (held.at !== undefined) stop()
  }
  const look = () => {
    const now = performance.now()
    if (now - (held.at ?? began) > (held.at === undefined ? patienceMs : settleMs)) return stop()
    if (!ready()) return
    const pressed = press !== undefined && !held.pressed ? reachable(press) : undefined
    if (pressed) {
      held.pressed = true
      pressed.click()
      if (to === undefined) return stop()
    }
    const wanted = held.pressed ? to : now - began > insteadMs ? instead : undefined
    const found = wanted === undefined ? undefined : reachable(wanted)
    if (!found) return
    held.at ??= now
    if (found !== document.activeElement) takeHand(found)
  }
  const timer = setInterval(look, everyMs)
  window.addEventListener('pointerdown', stop, true)
  window.addEventListener('keydown', act, true)
  return stop
}
