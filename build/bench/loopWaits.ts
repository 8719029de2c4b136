/** Watches how long the loop lets nothing else in, by a clock. Gives the longest, ms. */
async function longestBy(clock: () => number, work: () => Promise<unknown>): Promise<number> {
  const seen = { last: clock(), longest: 0, going: true }
  const look = (): void => {
    const at = clock()
    seen.longest = Math.max(seen.longest, at - seen.last)
    seen.last = at
    if (seen.going) setImmediate(look)
  }
  setImmediate(look)
  await work()
  await new Promise<void>((done) => setImmediate(() => setImmediate(done)))
  seen.going = false
  return seen.longest
}

/** The longest that a window of the same process would have to wait while this is done, ms. */
export const longestWait = (work: () => Promise<unknown>): Promise<number> =>
  longestBy(() => performance.now(), work)

/** The time that this thread has been at work, ms. */
function atWork(): number {
  const { user, system } = process.threadCpuUsage()
  return (user + system) / 1000
}

/** The same by the time the thread itself was at work, ms: what else a busy machine does counts for nothing, nor does waiting for the disk. */
export const longestTurn = (work: () => Promise<unknown>): Promise<number> => longestBy(atWork, work)
