import type { Board } from '../gate/leaf.ts'
import { firstLeaf, type Telling } from './described.ts'
import { timberWords } from './timberWords.ts'

/** Space left at each joint, mm, as it was worked out; 0 where boards touch or there is only one. */
const jointGap = ([first, second]: Board[]): number =>
  first && second ? second.x - first.x - first.width : 0

function edges({ boards: { section } }: Telling['spec']): string {
  if ((section.tongue ?? 0) === 0) return 'square-edged'
  return /\bV\b/i.test(section.name) ? 'tongued, grooved and V-jointed' : 'tongued and grooved'
}

/** The face: what boards, how thick, how much of each is seen, and how they are fixed. */
export function boardWords(telling: Telling): string[] {
  const { spec, sizes, one } = telling
  const { section } = spec.boards
  const { boards } = firstLeaf(telling)
  const gap = Math.round(jointGap(boards) * 10) / 10
  const timber = one === undefined ? ` in ${timberWords(section.species, spec)}` : ''
  const cut = boards.some(({ ripped }) => ripped) ? ', those at the edges cut down to suit' : ''
  const joints = gap > 0 ? `; ${sizes.small(gap)} is left at each joint for the timber to swell` : ''
  const thick = sizes.length(section.thickness)
  const seen =
    boards.length === 1
      ? `The face is a single ${edges(spec)} board${timber}, ${thick} thick.`
      : `The face is of ${edges(spec)} boards${timber}, ${thick} thick and showing ${sizes.length(section.width)} each${cut}${joints}.`
  return [seen, fixed(telling)]
}

const fixed = ({ spec }: Telling): string =>
  spec.fixings.kind === 'screw'
    ? 'The boards are screwed on from behind, so that no fixings show on the face.'
    : 'The boards are nailed through from the face and the nails clenched over behind.'
