import { bareTenonShare } from '../frameRoom.ts'
import type { FramePart } from '../leaf.ts'
import { both, counted, degrees, making, mm, sentences, type BenchLeaf, type Step } from './step.ts'

/** What a stile is wider by for its lap at a rebated meeting. */
function lapText({ blankWidth, section }: FramePart, alike: number): string {
  if (blankWidth <= section.width) return ''
  const whose = alike > 1 ? ', the first leaf’s' : ','
  return `${whose} ${mm(blankWidth)} wide with its lap`
}

const partText = ({ leaf, alike }: BenchLeaf, horn: number, tenon: number): string =>
  leaf.frame
    .map((part) =>
      part.name === 'top rail'
        ? `${alike > 1 ? `${alike} × t` : 'T'}op rail ${both(part.length)}, from ${mm(part.blankWidth)} wide, shoulders ${both(part.shoulder)} apart, tenons ${mm(tenon)}.`
        : `${alike > 1 ? `${alike} × ` : ''}${alike > 1 ? part.name : `${part.name[0]?.toUpperCase()}${part.name.slice(1)}`} ${both(part.length)}, with a horn of ${mm(horn)} at each end${lapText(part, alike)}.`,
    )
    .join(' ')

/** The ledges' places and joints. Ledge and board together are as thick as the stile, so the ledge's back comes flush with the stile's. */
function ledgeText(bench: BenchLeaf): string {
  const { leaf, spec } = bench
  const names = leaf.ledges.map(({ name, y }) => `${name}, centre ${both(y)} from the foot`).join('; ')
  const first = leaf.ledges[0]
  if (!first) return ''
  const tenon = mm(first.section.thickness * bareTenonShare)
  return sentences(
    `Ledges ${both(first.length)} long, ${both(first.shortLength)} between shoulders: ${names}.`,
    `Their tenons are bare-faced, ${tenon} thick and shouldered on the back only: the bare side lies in line with the rebate, ${mm(spec.boards.section.thickness)} from the stile’s face, and the ledge comes flush with the stile’s back.`,
    weatherText(bench),
  )
}

/** The frame of a framed gate: cutting, jointing, dry and for good. Nothing on a gate without one. */
export function frameSteps(bench: BenchLeaf): Step[] {
  const { frame } = bench.spec
  if (!frame) return []
  const { leaf, spec } = bench
  const thick = spec.ledges.section.thickness + spec.boards.section.thickness
  const diagonal = Math.hypot(leaf.width, leaf.height)
  const level = bench.plan.top.shape === 'level'
  return [
    making(bench, 'Cut the frame', {
      text: sentences(
        partText(bench, frame.horn, frame.tenon),
        `All ${mm(thick)} thick: board and ledge together. Pair the stiles and mark face side and edge.`,
      ),
    }),
    making(bench, 'Mortise, tenon and rebate', {
      text: sentences(
        `Set out both stiles together. ${ledgeText(bench)}`,
        `Rebate stiles and rail ${mm(frame.rebate)} deep for the boards, ${mm(spec.boards.section.thickness)} from the face.`,
      ),
      cautions: [
        'Cramp the work before chopping or routing; both hands behind the edge. Mask and extraction on.',
      ],
    }),
    making(bench, 'Put the frame together', {
      text: sentences(
        'Try it dry first: shoulders tight, out of wind.',
        level
          ? `Over all ${both(leaf.width)} wide; both diagonals alike, ${both(diagonal)} without the horns.`
          : `Over all ${both(leaf.width)} wide; both diagonals alike, measured to where stile and rail meet.`,
        'Then glue and wedge or pin the tenons, cramp, and look at the diagonals again.',
      ),
    }),
  ]
}

/** Boards into a frame. They stay loose in the rebates, so that they can move. */
export function framedBoardStep(bench: BenchLeaf): Step {
  const { leaf, spec } = bench
  const gap = spec.boards.gap
  const joint = typeof gap === 'number' && gap > 0 ? ` with ${mm(gap)} in every joint` : ''
  return making(bench, 'Spring the boards in', {
    text: `Frame face up, board 1 at the hanging stile. Lay ${counted(leaf.boards.length, 'board')} into the rebates${joint}, each left 12 mm down from the top rail; spring the last ones in together, press flat, then knock all up under the rail (L. Goring, p. 86). Never glue boards to each other, to a ledge or into a rebate: they must move.`,
    cautions: ['Keep fingers out from under the boards as they spring flat.'],
  })
}

/** Weathering of ledges, in words; empty where they aren't. */
export const weatherText = ({ spec }: BenchLeaf): string => {
  const weather = spec.ledges.weather ?? 0
  if (weather === 0) return ''
  return `Weather their upper edges ${degrees(weather)}, left flat where a brace stands.`
}
