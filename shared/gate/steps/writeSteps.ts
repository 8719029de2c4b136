import type { HangingLeaf } from '../leaf.ts'
import type { LeafPlan } from '../leafPlan.ts'
import { boardStep, ripSteps } from './boardSteps.ts'
import { braceSteps } from './braceSteps.ts'
import { cleanStep, footSteps, halvesSteps, meetingSteps, topSteps } from './edgeSteps.ts'
import { finishSteps } from './finishSteps.ts'
import { framedBoardStep, frameSteps } from './frameSteps.ts'
import { hangingSteps } from './hangingSteps.ts'
import { fixLedgesStep, layStep, ledgeStep, markStep } from './ledgeSteps.ts'
import type { BenchLeaf, Step, StepSource } from './step.ts'

/** Whether two leaves come out to the same sizes but for a lap, so that they are made together: a pair's, unless the ground makes them differ. */
function madeAlike(leaves: readonly HangingLeaf[]): boolean {
  const [first, second] = leaves
  if (first?.name !== 'first leaf' || !second) return false
  const sizes = ({ boards, ledges, braces, frame }: HangingLeaf): string =>
    JSON.stringify([
      boards.map(({ width, blank, heads, feet }) => [width, blank, heads, feet]),
      ledges,
      braces,
      frame.map(({ length, outline }) => [length, outline]),
    ])
  return sizes(first) === sizes(second)
}

const label = (name: HangingLeaf['name']): string =>
  name === 'leaf' ? '' : `${name[0]?.toUpperCase() ?? ''}${name.slice(1)}`

/** What lies on the bench in turn: each leaf, or a pair's two at once where they are alike. */
function benchLeaves(source: StepSource): BenchLeaf[] {
  const alike = madeAlike(source.leaves)
  const turns = alike ? source.leaves.slice(0, 1) : source.leaves
  return turns.map((leaf, index) => ({
    ...source,
    leaf,
    plan: source.plans[index] as LeafPlan,
    label: alike ? '' : label(leaf.name),
    alike: alike ? 2 : 1,
  }))
}

const framed = (bench: BenchLeaf): Step[] => [
  ...frameSteps(bench),
  boardStep(bench),
  ...ripSteps(bench),
  framedBoardStep(bench),
  markStep(bench),
  fixLedgesStep(bench),
]

const unframed = (bench: BenchLeaf): Step[] => [
  boardStep(bench),
  ...ripSteps(bench),
  ledgeStep(bench),
  layStep(bench),
  markStep(bench),
  fixLedgesStep(bench),
]

const stepsOf = (bench: BenchLeaf): Step[] => [
  ...(bench.spec.frame ? framed(bench) : unframed(bench)),
  ...braceSteps(bench),
  ...topSteps(bench),
  ...footSteps(bench),
  ...meetingSteps(bench),
  cleanStep(bench),
  ...halvesSteps(bench),
]

/** The order of making, then of hanging, written from this gate's own sizes, hinge side and boards to rip. */
export const writeSteps = (source: StepSource): Step[] => [
  ...benchLeaves(source).flatMap(stepsOf),
  ...finishSteps(source),
  ...hangingSteps(source),
]
