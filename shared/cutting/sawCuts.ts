import type { Board, Leaf } from '../gate/leaf.ts'
import type { GateSpec } from '../gate/spec.ts'

/** A cut that has to be made, whatever the saw, through a part of this thickness in mm. */
export type Cut = {
  cut: string
  part: string
  angle: number
  lean: 'flat' | 'bevel'
  thickness: number
  cutAt: number | null
  fence: number | null
  kind: 'across' | 'rip'
}

function boardCuts(spec: GateSpec, boards: Board[]): Cut[] {
  const { thickness } = spec.boards.section
  const trim = spec.boards.endTrim
  const across: Cut[] =
    trim > 0
      ? [
          {
            cut: 'square each board end',
            part: 'boards',
            angle: 0,
            lean: 'flat',
            thickness,
            cutAt: trim,
            fence: null,
            kind: 'across',
          },
        ]
      : []
  const rips = boards.flatMap((board, index) =>
    (['hanging', 'closing'] as const)
      .filter((edge) => board.strip[edge] > 0)
      .map((edge): Cut => ({
        cut:
          board.loses[edge] === 'tongue'
            ? `take off the tongue, ${edge} edge`
            : board.loses[edge] === 'groove'
              ? `take off the groove, ${edge} edge`
              : `rip, ${edge} edge`,
        part: `board ${index + 1}`,
        angle: 0,
        lean: 'flat',
        thickness,
        cutAt: board.strip[edge],
        fence: board.fence,
        kind: 'rip',
      })),
  )
  return [...across, ...rips]
}

function ledgeCuts(spec: GateSpec, leaf: Leaf): Cut[] {
  const { end } = spec.ledges
  const angle = end.cut === 'square' ? 0 : end.angle
  const thicknesses = [...new Set(leaf.ledges.map((ledge) => ledge.section.thickness))]
  return thicknesses.map((thickness) => ({
    cut: end.cut === 'square' ? 'ledge ends, square' : `ledge ends, ${end.cut}`,
    part: 'ledges',
    angle,
    lean: end.cut === 'bevelled' ? 'bevel' : 'flat',
    thickness,
    cutAt: end.cut === 'bevelled' ? null : 0,
    fence: null,
    kind: 'across',
  }))
}

function braceCuts(leaf: Leaf): Cut[] {
  const bySetting = new Map(leaf.braces.map((brace) => [brace.sawSetting.toFixed(6), brace]))
  return [...bySetting.values()].map((brace) => ({
    cut: 'both brace ends',
    part: bySetting.size === 1 ? 'braces' : `${brace.name} brace`,
    angle: brace.sawSetting,
    lean: 'flat',
    thickness: brace.section.thickness,
    cutAt: 0,
    fence: null,
    kind: 'across',
  }))
}

/** A framed leaf's stiles and rail are squared like any other timber; their joints are marked from the shoulders. */
const leafCuts = (spec: GateSpec, leaf: Leaf): Cut[] => [
  ...boardCuts(spec, leaf.boards),
  ...ledgeCuts(spec, leaf),
  ...braceCuts(leaf),
]

/** Every cut of a gate once: the second leaf of a pair is cut like the first, a stable door's upper half says which it is. */
export function cutsToMake(spec: GateSpec, leaves: Leaf[]): Cut[] {
  const seen = new Set<string>()
  return leaves.flatMap((leaf, index) =>
    leafCuts(spec, leaf).flatMap((cut) => {
      const id = JSON.stringify(cut)
      if (seen.has(id)) return []
      seen.add(id)
      return [index === 0 ? cut : { ...cut, part: `${leaf.name} ${cut.part}` }]
    }),
  )
}
