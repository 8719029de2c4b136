import { promiseWords } from '../format.ts'
import { dateWriter } from '../language/dateWriter.ts'

const ofThisYear = dateWriter({ weekday: 'short', day: 'numeric', month: 'short' })
const ofAnother = dateWriter({ weekday: 'short', day: 'numeric', month: 'short', year: 'numeric' })

/** 'Fri 6 Mar' of an ISO day, with its year where that isn't this one. */
export function dayText(iso: string, today: string): string {
  const day = new Date(`${iso}T12:00:00`)
  const write = iso.slice(0, 4) === today.slice(0, 4) ? ofThisYear : ofAnother
  return write(day).replace(',', '')
}

/** '3 days late', 'today', 'this week'; '' when further off. */
export const nearText = (due: string, today: string): string =>
  promiseWords(due, new Date(`${today}T12:00:00`)).replace(/^late by (.*)$/, '$1 late')

export const isLate = (due: string | null, today: string): boolean => due !== null && due < today
