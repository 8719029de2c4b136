/** Signs that no file's name may hold anywhere, and those that turn what follows round or can't be seen. */
const forbidden = /[<>:"/\\|?*]/g
const unseen = /[\p{Cc}\p{Cf}\p{Co}\p{Cn}\p{Zl}\p{Zp}]/gu
const loneHalf = /[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g
const reserved = /^(con|prn|aux|nul|com[0-9¹²³]|lpt[0-9¹²³])(?=\.|$)/i

/** The longest a name made from words may be, bytes: a folder's names may take 255, with a number and an ending beside. */
const mostBytes = 120

const bytesOf = (sign: string): number => {
  const code = sign.codePointAt(0) ?? 0
  return code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x10000 ? 3 : 4
}

function cut(words: string): string {
  let bytes = 0
  let kept = ''
  for (const sign of words) {
    bytes += bytesOf(sign)
    if (bytes > mostBytes) break
    kept += sign
  }
  return kept
}

const trimmed = (words: string): string => words.replace(/^[\s.]+|[\s.]+$/gu, '')

/**
 * Words from a job or a customer as part of a file's name that every kind of machine takes: no signs that lead to another folder, no
 * direction overrides or other unseen signs, no dots or spaces at its ends, 120 bytes at most, none of the names Windows keeps for itself.
 * '' where nothing is left. safeName('..\\CON') is 'CON_'; safeName('Hart/whistle ') is 'Hart-whistle'.
 */
export function safeName(words: string): string {
  const plain = words
    .slice(0, 1000)
    .normalize('NFC')
    .replace(loneHalf, '')
    .replace(/\s+/gu, ' ')
    .replace(unseen, '')
  const short = trimmed(cut(trimmed(plain.replace(forbidden, '-').replace(/^[-. ]+/u, ''))))
  return short.replace(reserved, '$1_')
}

const inPath = /^[^\\:*?"<>|]+$/

/** Whether a file's place inside the folder, written with '/', stays inside it whatever the machine: no way up, no drive, no unseen sign. */
export const isSafePlace = (place: string): boolean =>
  place.length <= 600 &&
  inPath.test(place) &&
  place.normalize('NFC') === place &&
  place.replace(unseen, '') === place &&
  place.split('/').every((part) => part !== '' && trimmed(part) === part && !reserved.test(part))
