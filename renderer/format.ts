import type { LengthUnit } from '../shared/job/job.ts'
import type { Figure } from '../shared/gate/figures.ts'
import { dateWriter } from './language/dateWriter.ts'
import { writeBoth, writeLength } from '../shared/units/writeLength.ts'

const sixteenth = 25.4 / 16
const clock = dateWriter({ hour: '2-digit', minute: '2-digit' })
const shortDay = dateWriter({ day: 'numeric', month: 'short', year: 'numeric' })
const shortWeekday = dateWriter({ weekday: 'short', day: 'numeric', month: 'short', year: 'numeric' })

/**
 * A length moved to the next whole step up or down, never below 0: 1 mm (10 with Shift), or in an inch job 1/16″ (1/8″ with Shift).
 * 1803.4 goes up to 1804.
 */
export function stepped(mm: number, how: { unit: LengthUnit; direction: 1 | -1; large: boolean }): number {
  const step = how.unit === 'mm' ? (how.large ? 10 : 1) : how.large ? sixteenth * 2 : sixteenth
  const steps = how.direction === 1 ? Math.floor(mm / step + 1e-6) + 1 : Math.ceil(mm / step - 1e-6) - 1
  return Math.max(0, Math.round(steps * step * 1e4) / 1e4)
}

/** An angle as read off a saw: 63.0°, to a tenth. */
export const writeAngle = (degrees: number): string => `${(Math.round(degrees * 10) / 10).toFixed(1)}°`

const plain = (value: number): string => String(Math.round(value * 1000) / 1000)

const isMoney = (unit: string): boolean => ['£', '€', '$'].includes(unit)

/** A sum in whole pounds and pence, as it is printed: £15.83. */
const writeSumOf = (sum: number, sign: string): string =>
  `${sum < 0 ? '−' : ''}${sign}${Math.abs(sum).toFixed(2)}`

/** A worked figure in words: lengths in the job's unit, angles to a tenth, counts whole. */
export function writeFigure(figure: Pick<Figure, 'value' | 'unit'>, unit: LengthUnit): string {
  if (figure.unit === 'mm') return writeLength(figure.value, unit)
  if (figure.unit === '°') return writeAngle(figure.value)
  if (figure.unit === 'no.') return plain(figure.value)
  if (isMoney(figure.unit)) return writeSumOf(figure.value, figure.unit)
  return `${plain(figure.value)} ${figure.unit}`.trim()
}

/** Both units for a length, otherwise as `writeFigure`. */
export const writeFigureFully = (figure: Pick<Figure, 'value' | 'unit'>, unit: LengthUnit): string =>
  figure.unit === 'mm' ? writeBoth(figure.value, unit) : writeFigure(figure, unit)

/** '14:02' of an ISO time, as the clock on the wall shows it where the words are from. */
export const writeTime = (iso: string): string => clock(new Date(iso))

/** '3 Jun 2026' of an ISO day or time, 'Jun 3, 2026' in American words. A bare day is that day everywhere. */
export function writeDay(iso: string): string {
  const day = iso.length === 10 ? new Date(`${iso}T12:00:00`) : new Date(iso)
  return shortDay(day)
}

const dayNumber = (day: Date): number =>
  Math.floor(Date.UTC(day.getFullYear(), day.getMonth(), day.getDate()) / 864e5)

/** How a promised day stands beside today, in words: 'late by 3 days', 'today', 'this week'; '' when further off. */
export function promiseWords(
  due: string,
  today: Date,
): '' | 'today' | 'tomorrow' | 'this week' | `late by ${string}` {
  const away = dayNumber(new Date(`${due}T12:00:00`)) - dayNumber(today)
  if (away < 0) return `late by ${away === -1 ? '1 day' : `${-away} days`}`
  if (away === 0) return 'today'
  if (away === 1) return 'tomorrow'
  const daysLeftInWeek = (7 - today.getDay()) % 7
  return away <= daysLeftInWeek ? 'this week' : ''
}

/** 'two things' of 2; figures from ten up. */
export const countWord = (count: number): string =>
  ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'][count] ?? String(count)

/** A size of paper in words. */
export const formatWord = { a4: 'A4', letter: 'Letter' } as const

/** 'Wed, 3 Jun 2026' of an ISO day. */
export const writeWeekday = (iso: string): string => shortWeekday(new Date(`${iso}T12:00:00`))

/**
 * A number put into a formula, by the name it goes under, which ends in its unit: to a thousandth without closing noughts, a sum of money
 * as it is printed: 'an hour £' of 38 is 'an hour', '£38.00'.
 */
export function writeInput(called: string, value: number): { called: string; words: string } {
  const sign = called.slice(-1)
  return isMoney(sign)
    ? { called: called.slice(0, -1).trim(), words: writeSumOf(value, sign) }
    : { called, words: plain(value) }
}

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)
