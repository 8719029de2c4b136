/** Marks and spaces that join a message to what stands before and after it: they are no part of it. */
const before = /^(?:[\s,;:.·()–—+−×=/-]+(?=[\p{L}\p{N}{“‘"'])|\s+)/u
const after = /[\s,;:·(–—+×=/-]+$/u

/** A message without what joins it to its neighbours, and those joints: ', two more ' is 'two more' between ', ' and ' '. */
export function bareMessage(message: string): { lead: string; text: string; tail: string } {
  const lead = before.exec(message)?.[0] ?? ''
  const rest = message.slice(lead.length)
  const tail = after.exec(rest)?.[0] ?? ''
  return { lead, text: rest.slice(0, rest.length - tail.length).replace(/\s+/g, ' '), tail }
}
