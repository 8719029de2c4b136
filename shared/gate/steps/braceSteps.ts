import type { Brace } from '../leaf.ts'
import { drillText } from './ledgeSteps.ts'
import { both, degrees, making, mm, sentences, type BenchLeaf, type Step } from './step.ts'

const nameOf = ({ name }: Brace): string => (name === 'single' ? 'brace' : `${name} brace`)

const cutText = (brace: Brace): string =>
  `The ${nameOf(brace)}: ${both(brace.length)} long point to long point, saw ${degrees(brace.sawSetting)} off square at both ends; it stands at ${degrees(brace.angle)}.`

function notchText({ leaf }: BenchLeaf): string {
  const notched = leaf.braces.flatMap((brace) => (brace.notch ? [{ brace, notch: brace.notch }] : []))
  if (notched.length === 0) return ''
  const marks = notched.map(
    ({ brace, notch }) =>
      `${nameOf(brace)}: from the long corner a shoulder square to the brace, ${mm(notch.shoulder)} long, then a straight slope of ${mm(notch.slope)} to the other corner`,
  )
  return `Mark the ends of the ${marks.join('; ')}. Lay the brace over, knife its ends on to the ledges and chop the notches ${mm(notched[0]?.notch.depth ?? 0)} deep, no deeper.`
}

/** Cutting, trying and fixing the braces; nothing on a leaf without. */
export function braceSteps(bench: BenchLeaf): Step[] {
  const { leaf, spec, holes, alike } = bench
  if (leaf.braces.length === 0) return []
  const several = leaf.braces.length > 1
  const word = several ? 'braces' : 'brace'
  const hole = holes.find(({ through }) => through === 'braces')
  const count = alike * leaf.fixings.filter(({ joins }) => joins === 'brace').length
  const line =
    spec.braces?.run === 'in-line' && several ? 'Both lie in one line: try a straight edge along them.' : ''
  const mirror = alike > 1 ? 'Two sets: the second leaf’s lean the other way.' : ''
  return [
    making(bench, `Cut the ${word} and try ${several ? 'them' : 'it'} dry`, {
      text: sentences(
        ...leaf.braces.map(cutText),
        notchText(bench),
        mirror,
        `Try ${several ? 'them' : 'it'} dry: foot at the hinge side, both ends tight before any fixing.`,
        line,
      ),
      cautions: leaf.braces.some(({ notch }) => notch !== null)
        ? ['Chisels: cramp the leaf, cut away from the hands.']
        : [],
    }),
    making(bench, `Fix the ${word}`, {
      text: sentences(
        `Press ${several ? 'each foot' : 'the foot'} home, then the head.`,
        hole ? drillText(hole, count) : '',
        'A brace with its foot at the closing side pulls the leaf down: look once more.',
      ),
    }),
  ]
}
