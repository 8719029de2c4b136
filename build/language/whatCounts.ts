/**
 * What counts as something the joiner reads, among all the texts a source holds. A text counts when it has a word in it and is
 * a phrase (two words or more) or begins as a sentence does; a single small word counts only where it is said (`saidHere`).
 */

/** Signs that stand only in code, addresses, selectors, patterns and colours. */
const code =
  /[{}<>=\\|]|=>|\(\)|\/\/|^\W*[./#@][\w-]|^(--|data-|aria-)|^\w+\.\w+(\.\w+)*$|:\w+\(|^[a-z]+:\S|^\d+x\d+$/

/** What the book's own query language begins with. */
const query =
  /^\s*(CASE WHEN|SELECT|INSERT|UPDATE|DELETE|CREATE|PRAGMA|WITH|DROP|ALTER|BEGIN|ATTACH|DETACH|VACUUM|REPLACE|AND|WHERE|ORDER BY|ON|FROM|LEFT|JOIN|SAVEPOINT|RELEASE|ROLLBACK|VALUES|COMMIT)\b/

/** Class lists, media queries, drawn paths, fonts and the like: phrases by their shape, words to nobody. */
const machine =
  /[\x00-\x08]|^\w+\.\w+, |^(translate|rotate|scale|matrix|rgb|hsl|var|calc|url|min|max|clamp|repeat)\(|^[Mm]\s?-?[\d.]|\b(sans-serif|max-age|charset|nosniff|same-origin|no-referrer)\b|^\d+(px|ms|%)|; ?\w+[-=]|^[\w-]+(\/[\w.+-]+)+$|(^| )'(self|none)'|^\[/

const word = /\p{L}{2,}/u

/** The bare text of a message: its gaps {0}, {1} away. */
const bare = (message: string): string => message.replace(/\{\d+\}/g, ' ')

/** Whether a text (gaps written {0}) is a phrase or a sentence to read, whatever stands round it. */
export function isPhrase(message: string): boolean {
  const text = bare(message)
  if (!word.test(text) || code.test(text) || query.test(text) || machine.test(text.trim())) return false
  const gaps = message !== text
  const words = text
    .trim()
    .split(/\s+/)
    .filter((piece) => /\p{L}/u.test(piece))
  if (/[a-z][A-Z]|_/.test(text.replace(/\b(McDonald|kWh|mAh)\b/g, ''))) return false
  if (gaps)
    return words.some((piece) => /^[\p{L}’',.:;()!?“”-]+$/u.test(piece)) && / |^\P{L}*\p{Lu}/u.test(message)
  if (words.length === 1 && /^\p{Ll}{3,} [^\p{L}]+$/u.test(text.trim())) return true
  if (words.length > 1) return words.some((piece) => /^\p{L}+/u.test(piece))
  return /^\p{Lu}[\p{Ll}’'-]+[.:!?…]?$/u.test(text.trim())
}

/** Signs of units: the same in every language. */
const unit = /^(mm|cm|m|km|m²|m³|kg|g|kg\/m³|N|kN|N\/mm²|kN\/m²|Pa|m\/s|s|ft|RH|mm²|dpi|A4)$/

/** Whether a message has nothing but gaps, figures and units in it. */
export const isBareUnit = (message: string): boolean =>
  bare(message)
    .split(/[\s,;:.×·+–—()/=-]+/)
    .every((piece) => !/\p{L}/u.test(piece) || unit.test(piece))

/** Whether a text is one small word: said in some places, a key in most. */
export const isSmallWord = (text: string): boolean =>
  /^\p{Ll}[\p{Ll}’'-]*( [£€$%°])?[.:!?…]?$/u.test(text.trim()) && word.test(text) && text !== 'null'

/** Names under which small words are said. */
const saying =
  /word|name|said|say|called|label|text|heading|title|note|echo|ways?$|message|remedy|also|told|describe|shape|list$|steps?$|sentence|where|which|side|end|plural|count|tick$|spans$/i

export const isSaying = (name: string): boolean => saying.test(name)

/** Functions whose texts are keys, addresses or patterns, or are told to nobody but whoever carries the program on. */
export const silentCalls = new Set(
  `request emit on off addEventListener removeEventListener dispatchEvent CustomEvent querySelector querySelectorAll closest matches
   defineStore getItem setItem removeItem prepare exec pragma transaction has get set delete includes startsWith endsWith indexOf
   lastIndexOf split replace replaceAll match test RegExp picklist literal Error RangeError TypeError SyntaxError URL Intl Collator
   log getAttribute setAttribute createElement getContext require resolve join inProject existsSync readFileSync writeFileSync
   setHeader getHeader createHash update digest toString postMessage Worker normalize toLocaleString padStart padEnd localeCompare
   handle invoke exposeInMainWorld getPath appendSwitch defineProperty matchMedia execCommand getPropertyValue setProperty
   inject provide assert expect importModule fetch Headers Response Blob File run`.split(/\s+/),
)

/** Entries of a record that hold a key, a colour, a place or a kind, never a sentence. */
export const silentEntries = new Set(
  `id key kind field code type role class use event path ink weight anchor pen level pragma sql method href src icon style
   family mime encoding format accelerator channel file folder customName columns table order as rel position align tag
   lang charset content-type ids figures fill stroke colour cap at mark`.split(/\s+/),
)

/** Attributes that never hold words. */
export const silentAttributes = new Set(
  `class id key ref is role type field href src for rows lines cols size width height kind style tabindex slot mode autocomplete
   inputmode spellcheck translate position align side as rel target method scope colspan viewBox d points fill stroke xmlns tag
   value stage unit rip part sheet most least to preserveAspectRatio text-anchor transform column`.split(
    /\s+/,
  ),
)

/** What reaches the page through an attribute of an element: the only attributes looked up as the page is drawn. */
export const readAttributes = new Set([
  'aria-label',
  'aria-description',
  'aria-valuetext',
  'aria-roledescription',
  'placeholder',
  'alt',
  'title',
  'data-word',
])

/** Files that say nothing to the joiner: they speak to other programs, to the log or to whoever starts a command. */
export const silentFiles = [
  /^electron\/(commands|loopback|paint)\//,
  /^electron\/(security|securityHeaders|offline|appProtocol|ipc|preload|log|catchFaults|faultMark|discreet|fonts|rendererFile|plainPayload|main)\.ts$/,
  /^db\/(migrations|connection|migrate|search|demo|sample)/,
  /^shared\/(requestNames|version)\.ts$/,
  /^shared\/language\//,
  /^renderer\/language\/.*\.ts$/,
]
