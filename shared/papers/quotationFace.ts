import type { Drawing, Fill, Mark } from '../drawing/drawing.ts'
import { rows } from '../drawing/dimensions.ts'
import { gateDrawings } from '../drawing/gateDrawings.ts'
import { design } from '../gate/design.ts'
import type { Design } from '../gate/designModel.ts'
import type { GateSpec } from '../gate/spec.ts'
import type { LengthUnit } from '../job/job.ts'

/** The design of a quoted gate. Throws RangeError when a check is a stop: what can't be made can't be quoted. */
export function quotedDesign(spec: GateSpec): Design {
  const outcome = design(spec)
  if (!outcome.made) throw new RangeError('a gate that can’t be made has no quotation')
  return outcome.design
}

/** Tints of a customer's drawing: boards pale, the frame round them a shade darker. */
const tints: Partial<Record<Fill, Fill>> = { board: 'ledge', ledge: 'brace' }

const tinted = (mark: Mark): Mark =>
  mark.kind === 'polygon' ? { ...mark, fill: tints[mark.fill] ?? mark.fill } : mark

/** What is for the bench alone: hidden edges, board numbers, the boards' own sizes, the hinge line's letter. */
const forBench = (mark: Mark): boolean =>
  mark.kind === 'badge' ||
  ('pen' in mark && mark.pen === 'hidden') ||
  (mark.kind === 'text' && mark.part?.includes('board ') === true) ||
  mark.part === 'dimension boards'

/** Share of a leaf's width that the words over its hinge side may take, clear of those over its middle or its other side. */
const wordShare = { single: 0.45, pair: 0.28 }

/** The sides in a customer's words, over the gate's upper corners, where there is room for them. */
function sideNamed(mark: Mark, leafWidth: number, pair: boolean): Mark {
  if (mark.kind !== 'text') return mark
  const within = leafWidth * (pair ? wordShare.pair : wordShare.single)
  if (mark.text === 'closing side') return { ...mark, text: 'latch side', within }
  if (mark.text !== 'hanging side') return mark
  const anchor = mark.anchor === 'end' ? 'start' : 'end'
  return { ...mark, text: 'hinge side', anchor, dx: 0, dy: 2, within }
}

/** The hinge line runs on a little past the gate, clear of the title. */
const shortened = (mark: Mark): Mark =>
  mark.kind === 'line' && mark.part?.endsWith('hinge line') === true && mark.extend
    ? { ...mark, extend: [2.6, 2.6] }
    : mark

/** Dimensions close up to the gate once those of its boards are gone. */
function closeUp(mark: Mark, pair: boolean): Mark {
  if (mark.kind !== 'chain' || mark.axis !== 'x') return mark
  if (mark.part === 'dimension width') return { ...mark, offset: pair ? -rows.second : -rows.first }
  return mark.part === 'dimension leaf width' ? { ...mark, offset: -rows.first } : mark
}

/**
 * The face of a gate as its customer sees it: timber tinted, hung as it will be, with its main sizes in both units and nothing that is
 * only for the bench. Horns are cut off by then, so none are drawn.
 */
export function quotationFace(spec: GateSpec, unit: LengthUnit): Drawing {
  const finished: GateSpec = spec.frame ? { ...spec, frame: { ...spec.frame, horn: 0 } } : spec
  const made = quotedDesign(finished)
  const { face } = gateDrawings(finished, made, unit)
  const pair = spec.leaves === 2 && !spec.stable
  const leafWidth = made.leaves[0]?.width ?? 0
  const marks = face.marks
    .filter((mark) => !forBench(mark))
    .map((mark) => closeUp(sideNamed(shortened(tinted(mark)), leafWidth, pair), pair))
  const toRight = marks.some((mark) => mark.kind === 'chain' && mark.axis === 'y' && mark.offset > 0)
  const [near, far] = [5, 20]
  return {
    ...face,
    title: 'From the front',
    margin: {
      left: toRight ? near : far,
      right: toRight ? far : near,
      top: 14,
      bottom: pair ? 26 : 15,
    },
    notes: [],
    marks,
  }
}

/** Words over a gate's corners, which a narrow column has no room for. */
const overCorner = (mark: Mark): boolean => mark.kind === 'text' && /^(hinge|latch) side$/.test(mark.text)

const withoutSecond = (mark: Mark): Mark =>
  mark.kind === 'chain'
    ? {
        ...mark,
        labels: mark.labels.map((label) => (label === null ? null : { ...label, secondary: undefined })),
      }
    : mark

/** The same face for a narrow column among others, as large as it goes there: sizes in the job's unit alone, and no title. */
export const forColumn = (face: Drawing): Drawing => ({
  ...face,
  title: '',
  margin: {
    ...face.margin,
    left: Math.min(face.margin.left, 11),
    right: Math.min(face.margin.right, 11),
    top: 12,
    bottom: face.margin.bottom - 4,
  },
  marks: face.marks.filter((mark) => !overCorner(mark)).map(withoutSecond),
})
