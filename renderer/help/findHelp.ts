import { checkHelp } from './checkHelp.ts'
import { gateFields, sectionFields } from './fields/gateFields.ts'
import { workFields } from './fields/workFields.ts'
import type { Topic } from './topic.ts'
import { benchTopics } from './topics/benchTopics.ts'
import { bookTopics } from './topics/bookTopics.ts'
import { handTopics } from './topics/handTopics.ts'

/** Everything help tells of, in the order of its list of contents. */
export const topics: readonly Topic[] = [...bookTopics, ...handTopics, ...benchTopics]

const fields: Readonly<Record<string, string>> = { ...gateFields, ...workFields }

/**
 * What a field asks for, by its path; undefined where nothing is written of it. The path itself first, then with a star for its last step, its
 * numbers, and the last word of a section: 'spec.ledges.section.width', 'size.widths.2', 'times.rip'.
 */
export function helpOfField(path: string): string | undefined {
  const plain = path.replace(/^spec\./, '')
  const steps = plain.split('.')
  const last = steps.at(-1) ?? ''
  const starred = steps.map((step) => (/^\d+$/.test(step) ? '*' : step)).join('.')
  const tries = [plain, starred, `${steps.slice(0, -1).join('.')}.*`, `${steps[0]}.*`]
  for (const one of tries) if (Object.hasOwn(fields, one)) return fields[one]
  if (Object.hasOwn(sectionFields, last)) return sectionFields[last]
  return steps.length > 2 ? helpOfField(steps.slice(0, -1).join('.')) : undefined
}

export const topicById = (id: string): Topic | undefined => topics.find((one) => one.id === id)

/** Why a finding matters. */
export const helpOfCheck = (id: string): string | undefined =>
  Object.hasOwn(checkHelp, id) ? checkHelp[id] : undefined

const lower = (text: string): string => text.toLocaleLowerCase('en').normalize('NFD').replace(/\p{M}/gu, '')

const wordsOf = (text: string): string[] => lower(text).match(/[\p{L}\p{N}]+/gu) ?? []

const textOf = ({ lead, parts }: Topic): string =>
  [lead, ...parts.flatMap(({ heading, says, steps }) => [heading, ...(says ?? []), ...(steps ?? [])])].join(
    ' ',
  )

/** How well a topic answers some words: each must begin a word of it; a title counts most, then the words it is also looked for by. */
function weight(topic: Topic, sought: readonly string[]): number {
  const rooms: [string[], number][] = [
    [wordsOf(topic.title), 9],
    [wordsOf(topic.also), 4],
    [wordsOf(textOf(topic)), 1],
  ]
  let total = 0
  for (const word of sought) {
    const best = Math.max(
      ...rooms.map(([words, worth]) => (words.some((one) => one.startsWith(word)) ? worth : 0)),
    )
    if (best === 0) return 0
    total += best
  }
  return total
}

/** The topics that answer what was typed, the best first; all of them when nothing was. */
export function findTopics(typed: string): Topic[] {
  const sought = wordsOf(typed)
  if (sought.length === 0) return [...topics]
  return topics
    .map((topic) => ({ topic, worth: weight(topic, sought) }))
    .filter(({ worth }) => worth > 0)
    .toSorted((one, other) => other.worth - one.worth)
    .map(({ topic }) => topic)
}
