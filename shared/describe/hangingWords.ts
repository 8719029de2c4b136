import type { Finish } from '../ironmongery/entry.ts'
import { listed } from './countWords.ts'
import type { Telling } from './described.ts'
import { commonFinish, pieceWords } from './pieceWords.ts'

const finishWord: Record<Finish, string> = {
  galvanised: 'galvanised',
  stainless: 'stainless steel',
  'black japanned': 'black japanned',
}

/** On which side it hangs, and which way it opens, as someone standing before the boards sees it. */
export function hangingWords({ spec, kind, called }: Telling): string[] {
  const way = spec.opens === undefined ? '' : spec.opens === 'to-face' ? 'towards you' : 'away from you'
  const far = spec.openTo === undefined ? '' : `through ${Math.round(spec.openTo)} degrees`
  const opens = [way, far].filter((words) => words !== '').join(', ')
  if (kind === 'pair') {
    const both = opens === '' ? '' : `, and both open ${opens}`
    return [`Seen from the boarded face, the ${spec.hung}-hand ${called} opens first${both}.`]
  }
  const whole = kind === 'stable' ? 'both halves hang' : `the ${called} hangs`
  const also = opens === '' ? '' : ` and ${kind === 'stable' ? 'open' : 'opens'} ${opens}`
  return [`Seen from the boarded face, ${whole} on the ${spec.hung}${also}.`]
}

/** The hinges and everything else of metal that is part of the price; plainly none where there is none. */
export function ironmongeryWords(telling: Telling): string[] {
  const { spec, sizes } = telling
  if (spec.ironmongery.length === 0) return ['Hinges, latch and other ironmongery are not included.']
  const common = commonFinish(spec.ironmongery)
  const tell = (pieces: typeof spec.ironmongery) =>
    listed(pieces.map((piece) => pieceWords(piece, sizes, common === undefined)))
  const hinges = spec.ironmongery.filter(({ kind }) => kind === 'hinge')
  const others = spec.ironmongery.filter(({ kind }) => kind !== 'hinge')
  const hung =
    hinges.length === 0
      ? 'Hinges are not included'
      : `${telling.kind === 'single' ? 'It hangs' : 'They hang'} on ${tell(hinges)}`
  const fitted =
    others.length === 0 ? '' : `, and ${telling.kind === 'single' ? 'has' : 'have'} ${tell(others)}`
  const separate =
    others.length === 0
      ? ''
      : `; ${tell(others)} ${others.length === 1 && others[0]?.quantity === 1 ? 'is' : 'are'} included`
  const all = common === undefined ? '' : ` The ironmongery is ${finishWord[common]}.`
  return hinges.length === 0 ? [`${hung}${separate}.${all}`] : [`${hung}${fitted}.${all}`]
}
