import { isTapeFraction } from './fraction.ts'

/** A part of a sum, as typed, to be added or taken away. */
export type Term = { text: string; takenAway: boolean }

/** A dash in a text that may join what stands on both sides of it instead of taking away. */
type JoiningDash = { at: number; certain: boolean }

const mixed = /(?<![\d.,/])(\d+)( ?)-( ?)(\d+)\/(\d+)(?![\d.,/])/g
const feetBefore = /(?:^|[+-]) ?\d+ ?(?:'|ft\.?|foot|feet) ?$/
const inchesAfter =
  /^ ?(?:\d+(?:\.\d+| \d+\/\d+|-\d+\/\d+)?|\d+\/\d+) ?(?:"|in\.?|ins\.?|inch|inches)?(?= ?(?:[+-]|$))/

/** 36-5/8 joins; with spaces about the dash it may be either. */
function mixedDashes(text: string): JoiningDash[] {
  return [...text.matchAll(mixed)].flatMap((found) => {
    const [, whole = '', before = '', after = '', numerator = '', denominator = ''] = found
    if (!isTapeFraction(numerator, denominator)) return []
    return [{ at: found.index + whole.length + before.length, certain: before === '' && after === '' }]
  })
}

/**
 * 6'-3" is six feet three on some drawings, and six feet less three inches to anyone doing a sum. A foot or more
 * after the dash only takes away, since the joined text makes no length then.
 */
function feetDashes(text: string): JoiningDash[] {
  return [...text.matchAll(/-/g)].flatMap(({ index }) => {
    const joins = feetBefore.test(text.slice(0, index)) && inchesAfter.test(text.slice(index + 1))
    return joins ? [{ at: index, certain: false }] : []
  })
}

/** The dash gives way to one space, so that later places in the text stay where they are. */
const joined = (text: string, { at }: JoiningDash): string => `${text.slice(0, at)} ${text.slice(at + 1)}`

/**
 * The ways in which the dashes of a plain text can be taken, each as a text in which every dash left takes away.
 * A dash joins a whole number to a tape fraction (36-5/8 is 36 5/8); with spaces about it (36 - 5/8), or between
 * feet and inches (6'-3"), it may join or take away, and both texts are given, the joined one first.
 * 36-12 and 36-5/6 only take away. undefined when more than two dashes are in doubt.
 */
export function dashReadings(text: string): string[] | undefined {
  const mixedOnes = mixedDashes(text)
  const doubtful = [...mixedOnes.filter((dash) => !dash.certain), ...feetDashes(text)]
  if (doubtful.length > 2) return undefined
  const start = mixedOnes.filter((dash) => dash.certain).reduce(joined, text)
  return doubtful
    .reduce((texts, dash) => texts.flatMap((one) => [joined(one, dash), one]), [start])
    .map((one) => one.replace(/ +/g, ' '))
}

/** Cuts a sum at its signs; says what is wrong when a sign has no length on one side of it. */
export function terms(text: string): Term[] | { wrong: string } {
  const pieces = text.split(/([+-])/).map((piece) => piece.trim())
  if (pieces[0] === '')
    return { wrong: `A length can’t start with ${pieces[1]}. Type it without the sign, as 1830 mm.` }
  const found: Term[] = [{ text: pieces[0] ?? '', takenAway: false }]
  for (let at = 1; at < pieces.length; at += 2) {
    const piece = pieces[at + 1] ?? ''
    if (piece === '') return { wrong: `There is no length after ${pieces[at]}. Type one there, as 1200+45.` }
    found.push({ text: piece, takenAway: pieces[at] === '-' })
  }
  return found
}
