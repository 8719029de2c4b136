const months = 'January|February|March|April|May|June|July|August|September|October|November|December'.split(
  '|',
)
const monthOf = (name: string): number => months.findIndex((month) => month.startsWith(name.slice(0, 3)))

const currencies: Readonly<Record<string, string>> = { '£': 'GBP', '€': 'EUR', $: 'USD' }

/** A day as the program writes it, long or short: 3 May 2026, 3 Jun 2026. */
const day = new RegExp(
  `(?<![\\p{L}\\d])(\\d{1,2}) (${months.join('|')}|Jan|Feb|Mar|Apr|Jun|Jul|Aug|Sept?|Oct|Nov|Dec) (\\d{4})(?!\\d)`,
  'gu',
)

/** A sum of money as the program writes it: £1,234.50, −€5.00. */
const sum = /(?<![\p{L}\d])(−?)([£€$])(\d{1,3}(?:,\d{3})+|\d+)\.(\d{2})(?!\d|\.\d)/gu

/** A number with a point or with thousands parted; not the number of a table, a section, a page or a standard. */
const number =
  /(?<![\p{L}\d.,]|(?:[Tt]ables?|[Ss]ections?|[Cc]lauses?|[Pp]ages?|pp?\.|§|Annex|EN|BS|ISO) ?)(\d{1,3}(?:,\d{3})+(?:\.\d+)?|\d+\.\d+)(?![\d]|[.,-]\d)/gu

const plainOf = (written: string): number => Number(written.replaceAll(',', ''))
const placesOf = (written: string): number => written.split('.')[1]?.length ?? 0

/** Figures as the British program writes them, turned into those of another place. */
export type Figured = (text: string) => string

const isShort = (month: string): boolean => month.length < 5 && !['May', 'June', 'July'].includes(month)

function dayIn(locale: string): Figured {
  const write = { long: formatDay(locale, 'long'), short: formatDay(locale, 'short') }
  return (text) =>
    text.replace(day, (whole) => {
      const [date = '', month = '', year = ''] = whole.split(' ')
      const at = Date.UTC(Number(year), monthOf(month), Number(date), 12)
      return (isShort(month) ? write.short : write.long).format(at)
    })
}

const formatDay = (locale: string, month: 'long' | 'short') =>
  new Intl.DateTimeFormat(locale, { day: 'numeric', month, year: 'numeric', timeZone: 'UTC' })

function numbersIn(locale: string): Figured {
  // Thousands are parted only where they were: a length isn't.
  const numberOf = (written: string) => {
    const places = placesOf(written)
    const how = {
      minimumFractionDigits: places,
      maximumFractionDigits: places,
      useGrouping: written.includes(','),
    }
    return new Intl.NumberFormat(locale, how).format(plainOf(written))
  }
  const moneyOf = (currency: string) =>
    new Intl.NumberFormat(locale, { style: 'currency', currency, currencyDisplay: 'narrowSymbol' })
  return (text) => {
    // A sum once written may hold what looks like a number again, so each stretch is written once.
    let out = ''
    let from = 0
    for (const found of text.matchAll(new RegExp(`${sum.source}|${number.source}`, 'gu'))) {
      const [whole, minus, sign, pounds, pence, plain] = found
      const amount = sign === undefined ? 0 : plainOf(`${pounds}.${pence}`) * (minus ? -1 : 1)
      const written =
        sign === undefined ? numberOf(plain ?? '') : moneyOf(currencies[sign] ?? 'GBP').format(amount)
      out += text.slice(from, found.index) + written
      from = found.index + whole.length
    }
    return out + text.slice(from)
  }
}

/** Whether a place writes numbers and sums as Britain does. */
const writesAsBritain = (locale: string): boolean =>
  new Intl.NumberFormat(locale, { minimumFractionDigits: 2 }).format(12345.5) === '12,345.50'

/**
 * Days, numbers and sums of the program's own sentences as a place writes them: '3 May 2026, £1,234.50, 1803.4 mm' in fr-FR is
 * '3 mai 2026, 1 234,50 £, 1803,4 mm'. The rules are Intl's (CLDR). Figures typed into a field aren't touched: those are read in every way of writing.
 */
export function figuresIn(locale: string): Figured {
  if (locale === 'en-GB') return (text) => text
  const [days, numbers] = [
    dayIn(locale),
    writesAsBritain(locale) ? (text: string) => text : numbersIn(locale),
  ]
  return (text) => (/\d/.test(text) ? numbers(days(text)) : text)
}
