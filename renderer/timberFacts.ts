import type { Timber } from '../shared/gate/spec.ts'
import { sourceWords, type Certainty, type Fact } from '../shared/timber/fact.ts'
import { strengthClasses } from '../shared/timber/strengthClasses.ts'
import type { FixingMetal, TimberFacts } from '../shared/timber/timberFacts.ts'

/** A value of a timber that is a number: its key on the job, its name, what it is written in, and how it is scaled to be read. */
export type TimberNumber = {
  key: 'density' | 'tangential' | 'radial' | 'shrinkage'
  label: string
  sign: string
  least: number
  most: number
  times: number
  per?: string
  factOf: (timber: TimberFacts) => Fact<number> | undefined
}

/** The numbers a timber is known by. A coefficient is read as a movement in hundredths: mm in 100 mm of width for 1 % of moisture. */
export const timberNumbers: readonly TimberNumber[] = [
  {
    key: 'density',
    label: 'Density',
    sign: 'kg/m³',
    least: 50,
    most: 1500,
    times: 1,
    factOf: (timber) => timber.density,
  },
  {
    key: 'tangential',
    label: 'Moves, flat-sawn',
    sign: 'mm in 100',
    least: 0,
    most: 2,
    times: 100,
    per: 'for 1 % of moisture',
    factOf: (timber) => timber.tangential,
  },
  {
    key: 'radial',
    label: 'quarter-sawn',
    sign: 'mm in 100',
    least: 0,
    most: 2,
    times: 100,
    per: 'for 1 % of moisture',
    factOf: (timber) => timber.radial,
  },
  {
    key: 'shrinkage',
    label: 'Shrinks in all',
    sign: '%',
    least: 0,
    most: 30,
    times: 1,
    factOf: (timber) => timber.tangentialShrinkage,
  },
]

const certaintyWords: Record<Certainty, string> = {
  published: 'published',
  'second-hand': 'as another text gives it',
  memory: 'from memory',
  'common practice': 'common practice',
  workshop: 'this workshop’s own',
}

/** How sure a value is, in words. */
export const howSure = (one: Fact<unknown> | undefined): string =>
  one ? certaintyWords[one.certainty] : 'not known'

/** Where a value comes from: its source, saying when that is memory. */
export const whereFrom = (one: Fact<unknown> | undefined): string => (one ? sourceWords(one) : 'not known')

/** A number of a timber as it is read, to three figures behind the point at most. */
export const readable = (value: number, times: number): number => Math.round(value * times * 1000) / 1000

/** What stands for “as listed” in a choice. */
export const listed = 'as listed'

type Option = { value: string; word: string; also?: string }

const asListed = (fact: Fact<string> | undefined): Option => ({
  value: listed,
  word: fact ? fact.value : 'not known',
  also: fact ? howSure(fact) : 'choose one where you know it',
})

/** The strength classes to choose from, the listed one first. */
export const strengthOptions = (fact: Fact<string> | undefined): Option[] => [
  asListed(fact),
  ...strengthClasses.map(({ name }) => ({ value: name, word: name, also: 'this workshop’s own' })),
]

/** Whether iron stains a timber, the listed word first. */
export const stainOptions = (fact: Fact<boolean> | undefined): Option[] => [
  asListed(fact && { ...fact, value: fact.value ? 'yes' : 'no' }),
  { value: 'yes', word: 'yes', also: 'iron marks it blue-black' },
  { value: 'no', word: 'no', also: 'it stays as it is' },
]

/** The metals that fixings may have to be of. */
export const fixingMetals = ['stainless', 'stainless preferred', 'galvanised'] as const
export const isFixingMetal = (word: string): word is FixingMetal => fixingMetals.some((one) => one === word)

/** What fixings should be of, the listed one first. */
export const fixingOptions = (fact: Fact<string> | undefined): Option[] => [
  asListed(fact),
  ...fixingMetals.map((value) => ({ value, word: value, also: 'this workshop’s own' })),
]

const durable = ['very durable', 'durable', 'moderately durable', 'slightly durable', 'not durable']

/** The durability classes of EN 350 to choose from, the listed one first; another that the job already has stays in the list. */
export function durabilityOptions(fact: Fact<string> | undefined, own: Timber): Option[] {
  const classes = durable.map((word, at) => ({ value: String(at + 1), word: String(at + 1), also: word }))
  const other = own.durability !== undefined && !/^[1-5]$/.test(own.durability) ? [own.durability] : []
  return [
    asListed(fact),
    ...classes,
    ...other.map((value) => ({ value, word: value, also: 'this workshop’s own' })),
  ]
}
