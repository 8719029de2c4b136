import { readFileSync } from 'node:fs'

/** One call about a socket as the tracer wrote it down. */
export type SocketCall = { call: string; line: string }

/** The calls by which a program reaches out or lets in; what only reads or closes isn't asked about. */
const telling = /^(?:\[pid\s+\d+\]\s+|\d+\s+)?(connect|bind|sendto|sendmsg|sendmmsg)\((.*)$/

/** Reads a trace (strace -f -e trace=network -o FILE) line by line. */
export const readTrace = (path: string): SocketCall[] =>
  readFileSync(path, 'utf8')
    .split('\n')
    .flatMap((line) => {
      const found = telling.exec(line)
      return found?.[1] ? [{ call: found[1], line }] : []
    })

const isLocal = (line: string): boolean => /sa_family=AF_(UNIX|NETLINK)\b/.test(line)

const address = /inet_addr\("([\d.]+)"\)|inet_pton\(AF_INET6, "([^"]+)"/

/**
 * Whether a call leaves the machine or listens to more than it: any address that isn't 127.0.0.1. Calls without an address
 * (on a socket that is connected) follow their connect and are judged there.
 */
export const leavesMachine = ({ line }: SocketCall): boolean => {
  if (!/sa_family=/.test(line) || isLocal(line)) return false
  if (/sa_family=AF_UNSPEC/.test(line)) return false
  const found = address.exec(line)
  return (found?.[1] ?? found?.[2]) !== '127.0.0.1'
}
