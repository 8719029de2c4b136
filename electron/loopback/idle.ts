/** Watches for a book that nobody looks at any more. */
export type IdleWatch = {
  /** A page asked for something, or said that it is open. */
  heard: () => void
  /** Begins to watch; `over` is called once, when nothing was heard for the whole time. */
  start: (over: () => void) => void
}

/** Into how many looks the time is cut. A machine that slept in between loses one look, not the whole time. */
const looks = 30

/**
 * Watches for `minutes` without a sign from any page; 0 never ends. Time is counted in looks and not by the clock, so
 * that a laptop shut overnight finds its book still open in the morning.
 */
export const watchIdle = (minutes: number): IdleWatch => {
  const quiet = { looks: 0 }
  return {
    heard: () => void (quiet.looks = 0),
    start: (over) => {
      if (minutes === 0) return
      const timer = setInterval(
        () => {
          quiet.looks += 1
          if (quiet.looks < looks) return
          clearInterval(timer)
          over()
        },
        (minutes * 60_000) / looks,
      )
      timer.unref()
    },
  }
}
