import type { Place } from '../stores/place.ts'
import { plainWords, type Command } from './command.ts'
import { ofJob } from './jobCommands.ts'

const everywhere: Command[] = [
  { id: 'start', says: 'Start a new job', also: 'enquiry customer add', key: { name: 'N' }, does: 'start' },
  {
    id: 'jobs',
    says: 'Go to the jobs',
    also: 'list book find search board',
    key: { name: '1' },
    go: { name: 'jobs' },
  },
  { id: 'every', says: 'See every job', also: 'old list search find', go: { name: 'jobs', sheet: 'all' } },
  { id: 'year', says: 'See the year', also: 'months overview worth', go: { name: 'jobs', sheet: 'year' } },
  {
    id: 'prices',
    says: 'Go to the prices',
    also: 'price list cost',
    key: { name: '2' },
    go: { name: 'prices' },
  },
  {
    ...{ id: 'timber', says: 'Go to the timber orders', also: 'merchant wood' },
    ...{ key: { name: '3' }, go: { name: 'timber', sheet: 'orders' } },
  },
  {
    ...{ id: 'workshop', says: 'Go to the workshop', also: 'settings saws drills name unit paper' },
    ...{ key: { name: '4' }, go: { name: 'workshop' } },
  },
  {
    id: 'order',
    says: 'Make a timber order',
    also: 'buy lengths merchant',
    go: { name: 'timber', sheet: 'make' },
  },
  { id: 'rack', says: 'Look on the rack', also: 'offcuts pieces', go: { name: 'timber', sheet: 'rack' } },
  {
    id: 'count',
    says: 'Take stock of the rack',
    also: 'count offcuts',
    go: { name: 'timber', sheet: 'count' },
  },
  { id: 'cards', says: 'Print this week’s cards', also: 'batch papers', go: { name: 'cards' } },
  {
    id: 'list',
    says: 'Take in a merchant’s list',
    also: 'import prices',
    go: { name: 'prices', part: 'list' },
  },
  {
    id: 'rise',
    says: 'Raise prices',
    also: 'increase per cent dearer',
    go: { name: 'prices', part: 'percent' },
    lead: { to: '[data-field="percent"]' },
  },
  {
    id: 'rises',
    says: 'See when prices changed',
    also: 'history rise',
    go: { name: 'prices', part: 'rises' },
  },
  { id: 'took', says: 'See what jobs really took', also: 'hours estimates', go: { name: 'estimates' } },
  {
    ...{
      id: 'copies',
      says: 'Back up the book',
      also: 'backup copy stick restore',
      go: { name: 'workshop' },
    },
    lead: { to: '[data-lead="back-up"], [data-field="keeping.folder"]' },
  },
  {
    id: 'help',
    says: 'Help for where you are',
    also: 'how explain',
    key: { name: 'F1', plain: true },
    does: 'help',
  },
]

/** What can be done from a place: on a job its own first. */
export const commandsAt = (place: Place): Command[] =>
  place.name === 'job' ? [...ofJob(place.id), ...everywhere] : everywhere

/** The commands in which every word typed begins a word, in their order. */
export function commandsFor(commands: readonly Command[], typed: string): Command[] {
  const sought = plainWords(typed)
  return commands.filter(({ says, also }) => {
    const words = plainWords(`${says} ${also ?? ''}`)
    return sought.every((one) => words.some((word) => word.startsWith(one)))
  })
}

/** How a key is written on this kind of machine: Ctrl+N, on a Mac ⌘N. */
export const keyWords = ({ name, plain: alone }: NonNullable<Command['key']>, mac: boolean): string =>
  alone ? name : mac ? `⌘${name}` : `Ctrl+${name}`
