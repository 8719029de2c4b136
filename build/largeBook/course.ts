import type { Stage } from '../../shared/job/job.ts'
import type { Draws } from '../bench/seeded.ts'

/** The day that every generated book is looked at on, and how many days before it the first job came in: ten years. */
export const bookToday = '2026-03-02'
const daysBack = 3650
const dayMs = 86_400_000

/** How many jobs a small workshop has in hand at once, whatever lies in its book. */
const mostInHand = 60

/** How a job went: when it came in, how far it got, the day promised, when it was last touched. Moments and days are ISO. */
export type Course = { at: string; updatedAt: string; stage: Stage; due: string | null }

const moment = (days: number, draws: Draws): string =>
  new Date(
    Date.parse(`${bookToday}T07:00:00.000Z`) + days * dayMs + draws.between(0, 39_000) * 1000,
  ).toISOString()

const day = (days: number): string =>
  new Date(Date.parse(`${bookToday}T12:00:00.000Z`) + days * dayMs).toISOString().slice(0, 10)

/** Jobs in hand, promised from three weeks ago (late) to nine weeks on. */
const inHand = (came: number, draws: Draws): Course => ({
  at: moment(came, draws),
  updatedAt: moment(-draws.between(0, 20), draws),
  stage: draws.one(['enquiry', 'surveyed', 'designed', 'quoted', 'ordered', 'making', 'making'] as const),
  due: draws.between(1, 6) === 1 ? null : day(draws.between(-21, 63)),
})

/** Jobs of years ago: most are hung, some quoted to people who never answered, some no more than a call. */
function bygone(came: number, draws: Draws): Course {
  const fate = draws.between(1, 100)
  const took = Math.min(draws.between(18, 90), -came)
  const end = { at: moment(came, draws), updatedAt: moment(came + took, draws) }
  if (fate <= 74) return { ...end, stage: 'hung', due: day(came + took) }
  return { ...end, stage: fate <= 94 ? 'quoted' : 'enquiry', due: null }
}

/** How the job at a place of so many went; the last ones are those in hand. */
export function courseOf(place: number, count: number, draws: Draws): Course {
  const inHandCount = Math.min(mostInHand, Math.ceil(count * 0.06))
  const came = -Math.floor(daysBack * (1 - place / count))
  return place >= count - inHandCount ? inHand(Math.min(came, -1), draws) : bygone(Math.min(came, -1), draws)
}
