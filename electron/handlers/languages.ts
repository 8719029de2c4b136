import { good } from '../../shared/problem.ts'
import type { Handler } from './context.ts'

/** The languages that words can be shown and printed in, besides British English. */
export const offerLanguages: Handler<'language.offered'> = ({ languages }) => good(languages?.offered() ?? [])

/** One language's words; null where there is none of that tag any more. */
export const readLanguage: Handler<'language.read'> = ({ languages }, { tag }) =>
  good(languages?.read(tag) ?? null)
