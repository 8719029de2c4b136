/** A fault's message never carries more than this into the log, characters. */
const longest = 300

/** What stands between marks of quotation, or in a list or record, may be what somebody typed. */
const quoted = /“[^”]*”|‘[^’]*’|"(?:[^"\\]|\\.)*"|`[^`]*`|(?<![\p{L}\d])'[^'\n]*'(?![\p{L}\d])/gu
const records = /[[{].*[\]}]/gsu
const numbers = /\+?\d[\d\s()./-]{4,}\d|\d{5,}/g
const mail = /\S+@\S+/g

/** The names of our own fields that Node quotes, as in "reading 'spec'": a word of the program, nobody's name. */
const field = /\((reading|setting) '([a-zA-Z]{1,40})'\)/g

/**
 * A fault's words without what a customer or the joiner may have typed: quoted pieces, records, long numbers and
 * addresses become "…". What Node says of the program's own fields stays.
 * `Unexpected token 'M', "Müller" is not valid JSON` becomes `Unexpected token …, … is not valid JSON`.
 */
export const withoutNames = (message: string): string =>
  message
    .replace(field, '($1 the field $2)')
    .replace(quoted, '…')
    .replace(records, '…')
    .replace(mail, '…')
    .replace(numbers, '…')
    .replace(/\s+/g, ' ')
    .slice(0, longest)

/** A line of a stack: 'at answer (/home/ann/bracework/electron/handlers/answer.ts:40:9)' loses the folders it lies in. */
const frame = (line: string): string =>
  line.trim().replace(/(?:file:\/\/)?(?:[A-Za-z]:)?[\\/][^()]*[\\/](?=[^\\/()]+\)?$)/, '')

const codeOf = (error: Error): string =>
  'code' in error && (typeof error.code === 'string' || typeof error.code === 'number')
    ? ` ${error.code}`
    : ''

/** The lines of the stack after the message, which could itself hold lines that look like them; none where it isn't found. */
const framesOf = ({ stack = '', message }: Error): string[] => {
  const at = stack.indexOf(message)
  if (at < 0) return []
  return stack
    .slice(at + message.length)
    .split('\n')
    .filter((line) => /^\s+at /.test(line))
}

/** A fault as the log may hold it: its kind, its code, its words without names, where in the program it arose, and what caused it. */
export const faultWords = (error: unknown): string => {
  if (!(error instanceof Error)) return withoutNames(String(error))
  const frames = framesOf(error)
  const cause = error.cause === undefined ? [] : [`caused by ${faultWords(error.cause)}`]
  const head = `${error.name}${codeOf(error)}: ${withoutNames(error.message)}`
  return [head, ...frames.slice(0, 12).map((line) => `  ${frame(line)}`), ...cause].join('\n')
}
