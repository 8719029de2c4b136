import type { Printer } from './printer.ts'
import type { FullSizeKind } from './template.ts'

/** What full-size sheets are printed: which kinds, in their own order; the day they are printed; the printer's error. */
export type FullSizeChoice = { kinds: readonly FullSizeKind[]; day: string; printer: Printer }
