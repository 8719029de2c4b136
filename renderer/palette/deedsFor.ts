import { plainWords, type Command } from './command.ts'
import { ofJob } from './jobCommands.ts'

/**
 * Words that name a deed and a job together, as “quote hartwhistle” does. deeds: the ids of the job's commands meant, those with most words in
 * them; rest: the words left, by which the job is found; revision: a small number among them, the card's.
 */
export type DeedAndJob = { deeds: string[]; rest: string; revision?: number }

const mostDeeds = 3
const none: DeedAndJob = { deeds: [], rest: '' }

/** Which of a job's commands some of the typed words name, and what is left of them; no deeds where all or none of the words do. */
export function deedAndJob(typed: string): DeedAndJob {
  const words = plainWords(typed)
  const told = ofJob(0).map((command) => {
    const own = plainWords(`${command.verb ?? ''} ${command.also ?? ''}`)
    return {
      id: command.id,
      named: words.map((word) => word.length > 2 && own.some((one) => one.startsWith(word))),
    }
  })
  const counted = told.map((one) => ({ ...one, count: one.named.filter(Boolean).length }))
  const most = Math.max(...counted.map(({ count }) => count))
  const [first, ...others] = counted.filter(({ count }) => count === most && count > 0)
  const left = words.filter((_, at) => !first?.named[at])
  const number = left.length > 1 ? left.find((word) => /^[1-9]\d?$/.test(word)) : undefined
  const rest = left.filter((word) => word !== number)
  if (!first || rest.length === 0) return none
  const same = others.filter(({ named }) => named.every((one, at) => one === first.named[at]))
  return {
    deeds: [first, ...same].slice(0, mostDeeds).map(({ id }) => id),
    rest: rest.join(' '),
    ...(number === undefined ? {} : { revision: Number(number) }),
  }
}

/** A job's command by its id. */
export const jobCommand = (id: string, job: number): Command | undefined =>
  ofJob(job).find((command) => command.id === id)
