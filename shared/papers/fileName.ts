/** Letters of a name before its ending. */
const mostLetters = 60

/** Names that Windows keeps for itself, whatever stands after their first dot. */
const reserved = /^(con|prn|aux|nul|com[0-9¹²³]|lpt[0-9¹²³])(\..*)?$/i

/** What no system takes in a name, or what would hide how it ends: signs of folders, control and direction characters, halves of characters. */
const refused = /[<>:"/\\|?*\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/gu

const trimmed = (name: string): string => name.replace(/^[\s.]+|[\s.]+$/g, '')

/**
 * A name to keep something under, from words that may hold anything: never another folder, no name a system keeps for itself, 60 letters at most
 * before its ending. ['2026-007', 'Gate: ../side'] and 'png' give '2026-007 Gate side.png'.
 */
export function fileName(words: readonly string[], ending: string): string {
  const plain = words
    .join(' ')
    .normalize('NFC')
    .replace(refused, ' ')
    .replace(/\.{2,}/g, ' ')
  const whole = trimmed(plain.replace(/\s+/g, ' '))
  const cut = trimmed([...whole].slice(0, mostLetters).join(''))
  const name = cut === '' ? 'gate' : reserved.test(cut) ? `gate ${cut}` : cut
  return `${name}.${ending}`
}
