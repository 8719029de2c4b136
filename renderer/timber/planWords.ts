import type {
  Order,
  OrderCandidate,
  OrderState,
  RackLeaving,
  UnpricedTimber,
} from '../../shared/ordering/orderModel.ts'
import { countWord } from '../format.ts'
import type { ChosenPlan } from './plansInHand.ts'

/** A small sum as it is said: 31p of 31 in pounds; a larger one, or another currency's, as it is printed. */
export const smallSum = (pence: number, write: (pence: number) => string): string =>
  pence < 100 && write(0).startsWith('£') ? `${pence}p` : write(pence)

/** How sure it is that a plan is the cheapest: proven, by how much it may be dearer, or not known at all. */
export function sureWords({ plan, least }: ChosenPlan, write: (pence: number) => string): string {
  if (plan.cost === least) return 'No cheaper way there is'
  if (least === 0) return 'How near it is to the cheapest isn’t known yet'
  return `At most ${smallSum(plan.cost - least, write)} dearer than the best there is`
}

/** Which way the braces are cut, where there was a choice; '' where there was none. */
export function braceWords({ paired, plan, other }: ChosenPlan, write: (pence: number) => string): string {
  if (other === null) return paired ? 'Braces two from one piece.' : ''
  if (!paired) return 'Each brace from its own blank: two from one piece would be no cheaper.'
  return `Braces two from one piece: ${smallSum(other - plan.cost, write)} cheaper than each from its own blank.`
}

/** Why timber can't be ordered, and what to do about it. */
export const unpricedWords: Record<UnpricedTimber['why'], string> = {
  'no item': 'isn’t in the price book: add it there with its price',
  'no price': 'has no price: put one down in the price book',
  'no lengths kept': 'has no lengths: say in the price book which lengths the merchant keeps',
  'no length': 'isn’t kept long enough: add a longer length in the price book',
}

/**
 * Why timber is left out of an order, and what to do about it. Of a blank that no length holds also which it is, the longest that can be had, what
 * the ends' trim took of that, and by how much it is too long.
 */
export function leftOutWords(
  { why, tooLong }: Pick<UnpricedTimber, 'why' | 'tooLong'>,
  long: (mm: number) => string,
): string {
  if (!tooLong) return unpricedWords[why]
  const { part, number, length, longest, of, from, trim } = tooLong
  const whole =
    from === 'rack'
      ? 'a piece on the rack'
      : trim > 0
        ? `a length of ${long(of)} less ${long(trim)} trimmed off its ends`
        : `a whole length`
  return `${unpricedWords[why]}. The ${part} of ${number} takes ${long(length)}; the longest to be had is ${long(longest)} (${whole}; the last saw cut meets its end), ${long(Math.round((length - longest) * 10) / 10)} too short`
}

/** How an order stands. */
export const stateWords: Record<OrderState, string> = {
  placed: 'Placed',
  received: 'All of it has come',
  cut: 'All of it is cut',
  cancelled: 'Cancelled',
}

/** Reasons for taking a piece out, as buttons. */
export const leavingWords: Record<RackLeaving, string> = {
  'cut up': 'It was cut up',
  scrapped: 'It was scrapped',
  'given away': 'It was given away',
  'not found': 'It isn’t there',
}

/** How an open order stands, part of it come or not. */
export const standsWords = ({ state, lines }: Pick<Order, 'state' | 'lines'>): string =>
  state === 'placed' && lines.some(({ received }) => received > 0) ? 'Part of it has come' : stateWords[state]

export const jobsCount = (count: number): string => (count === 1 ? 'one job' : `${countWord(count)} jobs`)

/** The first sentence of a hindrance: the rest stands on the job's own page. */
export const firstSentence = (words: string): string =>
  /^.*?[.;](?=\s|$)/.exec(words)?.[0].replace(/;$/, '.') ?? words

export const isOpen = ({ hindrance, orderedOn }: OrderCandidate): boolean =>
  hindrance === null && orderedOn === null
