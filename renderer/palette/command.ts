import type { Place } from '../stores/place.ts'
import type { Lead } from './leadTo.ts'

/**
 * Something the program does on a word. says: its words on the list; verb: those beside a job's name, of one that is done with a job; also: what it is found by beside them; key: the letter, digit or name that does it
 * with Ctrl, Cmd on a Mac; go: the place it leads to; lead: the very thing on it; does: what it does otherwise, to the job it names.
 */
export type Command = {
  id: string
  says: string
  verb?: string
  also?: string
  key?: { name: string; plain?: boolean }
  go?: Place
  lead?: Lead
  does?: 'start' | 'help' | 'again'
  job?: number
}

/** The bare words of a text, as they are compared: small letters without marks. */
export const plainWords = (text: string): string[] =>
  text
    .toLocaleLowerCase('en')
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .match(/[\p{L}\p{N}]+/gu) ?? []
