/** Watches how long the loop lets nothing else in: what a window of the same process would have to wait. Gives the longest, ms. */
export async function longestWait(work: () => Promise<unknown>): Promise<number> {
  const seen = { last: performance.now(), longest: 0, going: true }
  const look = (): void => {
    const at = performance.now()
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

/** The same by the time the thread itself was at work, ms: what else a busy machine does counts for nothing, nor does waiting for the disk. */
export async function longestTurn(work: () => Promise<unknown>): Promise<number> {
  const atWork = (): number => {
    const { user, system } = process.threadCpuUsage()
    return (user + system) / 1000
  }
  const seen = { last: atWork(), longest: 0, going: true }
  const look = (): void => {
    const at = atWork()
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
