const named = (hand: string): string => `bracework.hand.${hand}`

const drawn = (): string =>
  Array.from(window.crypto.getRandomValues(new Uint8Array(9)), (byte) => byte.toString(36)).join('')

/** This window's own name, a new one each time it is opened: what is typed here is told apart from what another window types. */
export const hand = drawn()

// Held for as long as the window lives, however it ends: the browser lets go of it, and others see that nobody is there any more.
if (navigator.locks) void navigator.locks.request(named(hand), () => new Promise<never>(() => undefined))

/** Whether the window of that name is open still. */
export async function isThere(other: string): Promise<boolean> {
  if (other === hand || !navigator.locks) return false
  const { held = [] } = await navigator.locks.query()
  return held.some(({ name }) => name === named(other))
}
