type Listener = (...args: never[]) => unknown

/** Notes every call made on it, and keeps the listeners and handlers it is given so that a test can call them. */
export type Recorder = {
  /** Stands in for one of Electron's objects; what isn't named in `gives` records the call and returns undefined. */
  object: never
  calls: { name: string; args: unknown[] }[]
  /** The handler last given by a call of this name (for `on`, `once` and `handle`: with this first argument). */
  handler: (name: string, key?: string) => (...args: unknown[]) => unknown
}

/** Makes a recorder; `gives` holds properties that must be real, such as `webContents` or `webRequest`. */
export const makeRecorder = (gives: Readonly<Record<string, unknown>> = {}): Recorder => {
  const calls: { name: string; args: unknown[] }[] = []
  const object = new Proxy(gives, {
    get: (target, name) =>
      typeof name === 'string' && !(name in target)
        ? (...args: unknown[]) => void calls.push({ name, args })
        : Reflect.get(target, name),
  })
  return {
    object: object as never,
    calls,
    handler: (name, key) => {
      const found = calls.findLast(
        (made) => made.name === name && (key === undefined || made.args[0] === key),
      )
      const given = found?.args.findLast((arg): arg is Listener => typeof arg === 'function')
      if (!given) throw new Error(`nothing was given to ${name} ${key ?? ''}`)
      return given as (...args: unknown[]) => unknown
    },
  }
}

/** An event whose preventDefault is noted in `prevented`. */
export const makeEvent = (more: object = {}): { prevented: boolean; preventDefault: () => void } => {
  const event = {
    ...more,
    prevented: false,
    preventDefault: () => {
      event.prevented = true
    },
  }
  return event
}
