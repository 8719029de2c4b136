import { randomBytes, timingSafeEqual } from 'node:crypto'

/** 24 random bytes, 192 bits, in letters that stand in an address as they are. */
const freshKey = (): string => randomBytes(24).toString('base64url')

const same = (one: string, other: string): boolean => {
  const [a, b] = [Buffer.from(one), Buffer.from(other)]
  return a.length === b.length && timingSafeEqual(a, b)
}

/** Who may come in: one-time keys for the address, and the cookie that a key is exchanged for. */
export type Door = {
  /** A key that opens once. */
  newKey: () => string
  /** Whether this key still opens; it never opens again. */
  useKey: (key: string) => boolean
  /** The header that gives a browser its cookie. */
  setCookie: (port: number) => string
  /** Whether a request's Cookie header holds ours. */
  knows: (cookieHeader: string | undefined, port: number) => boolean
}

const cookieName = (port: number): string => `bracework-${port}`

/** A page on another port can leave cookies of our name with a longer path, which come before ours: all are looked at. */
const cookiesNamed = (header: string, name: string): string[] =>
  header
    .split(';')
    .map((pair) => pair.trim())
    .filter((pair) => pair.startsWith(`${name}=`))
    .map((pair) => pair.slice(name.length + 1))

/**
 * Makes the door of one run of the host. A cookie ignores ports, so its name carries the port: two books open at once
 * don't overwrite each other's. It lasts a week in the browser, but no longer than this run of the host.
 * fixedKey, for tests and development only, is a key that opens any number of times.
 */
export const makeDoor = (fixedKey?: string): Door => {
  const keys = new Set<string>()
  const token = freshKey()
  return {
    newKey: () => {
      const key = freshKey()
      keys.add(key)
      return key
    },
    useKey: (key) => {
      if (fixedKey !== undefined && same(key, fixedKey)) return true
      const held = [...keys].find((candidate) => same(candidate, key))
      return held !== undefined && keys.delete(held)
    },
    setCookie: (port) => `${cookieName(port)}=${token}; HttpOnly; SameSite=Strict; Path=/; Max-Age=604800`,
    knows: (header, port) =>
      cookiesNamed(header ?? '', cookieName(port)).some((cookie) => same(cookie, token)),
  }
}
