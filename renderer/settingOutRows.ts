import type { Design } from '../shared/gate/designModel.ts'
import type { HangingLeaf } from '../shared/gate/leaf.ts'
import { leafPrefix } from '../shared/gate/leafPrefix.ts'
import { cutRowsOf, leafGroups, type Named, type ResultGroup, type ResultRow } from './resultRows.ts'

const sizeRows = (design: Design, at: string): ResultRow[] =>
  cutRowsOf(design, [
    [`${at}leaf.width`, 'leaf, wide'],
    [`${at}leaf.height`, 'leaf, high'],
    [`${at}whole.height`, 'both halves, high'],
    [`${at}leaf.diagonal`, 'from corner to corner, when square'],
    [`${at}opening.taper`, 'widths of the opening differ by'],
    [`${at}opening.widestGap`, 'widest gap at the posts'],
    [`${at}opening.fall`, 'heights of the opening differ by'],
    [`${at}opening.outOfSquare`, 'diagonals differ by'],
    [`${at}opening.outOfPlumb`, 'most out of plumb'],
    [`${at}boards.count`, 'boards'],
    [`${at}boards.gap`, 'gap between boards'],
    [`${at}boards.tongueReach`, 'tongue in its groove'],
    [`${at}ledges.count`, 'ledges'],
  ])

const frameRows = (design: Design, at: string): ResultRow[] =>
  cutRowsOf(design, [
    [`${at}frame.shoulder`, 'from stile to stile'],
    [`${at}frame.railLower`, 'lower edge of the rail, from the foot'],
    [`${at}frame.tenonThickness`, 'bare-faced tenons, thick'],
    ...(['hanging stile', 'closing stile', 'top rail'] as const).flatMap((name) => {
      const id = `${at}frame.${name.replace(' ', '-')}`
      return [
        [`${id}.length`, `${name}, long`],
        [`${id}.shoulder`, `${name}, between ${name === 'top rail' ? 'shoulders' : 'horns'}`],
        [`${id}.blankWidth`, `${name}, wide before it is shaped`],
      ] as const
    }),
  ])

const meetingRows = (design: Design, at: string): ResultRow[] =>
  cutRowsOf(design, [
    [`${at}meeting.lap`, 'lap'],
    [`${at}meeting.widthWithLap`, 'leaf that opens first, with its lap'],
    [`${at}meeting.stripWidth`, 'cover strip, wide'],
    ...Object.keys(design.figures)
      .filter((id) => id.startsWith(`${at}board.`) && id.endsWith('.widthWithLap'))
      .map((id) => [id, 'board that carries the lap, wide'] as const),
  ])

const topRows = (design: Design, at: string): ResultRow[] =>
  cutRowsOf(design, [
    [`${at}top.lowest`, 'lowest point of the top'],
    [`${at}top.radius`, 'radius of the curve'],
  ])

/** Heights of a shaped top over the foot, by how far from the hanging edge. */
function heightRows(design: Design, at: string): ResultRow[] {
  const start = `${at}top.height.`
  const named: Named = Object.keys(design.figures)
    .filter((id) => id.startsWith(start))
    .map((id) => [id, `at ${id.slice(start.length)}`] as const)
  return cutRowsOf(design, named)
}

const ledgeRows = (design: Design, at: string, leaf: HangingLeaf): ResultRow[] =>
  cutRowsOf(
    design,
    leaf.ledges.flatMap(({ name }) => {
      const id = `${at}ledge.${name}`
      return [
        [`${id}.y`, `${name} ledge, middle of it from the foot`],
        [`${id}.length`, `${name} ledge, long edge`],
        [`${id}.shortLength`, `${name} ledge, short edge`],
        [`${id}.weatherDrop`, `${name} ledge, weathered edge falls`],
      ] as const
    }),
  )

const braceRows = (design: Design, at: string, leaf: HangingLeaf): ResultRow[] =>
  cutRowsOf(
    design,
    leaf.braces.flatMap(({ name }) => {
      const id = `${at}brace.${name}`
      const called = name === 'single' ? 'brace' : `${name} brace`
      return [
        [`${id}.clearHeight`, `${called}, between the ledges`],
        [`${id}.run`, `${called}, run along the ledge`],
        [`${id}.angle`, `${called}, angle`],
        [`${id}.sawSetting`, `${called}, saw off square`],
        [`${id}.edgeLength`, `${called}, edge`],
        [`${id}.length`, `${called}, long points`],
        [`${id}.contact`, `${called}, along each ledge`],
        [`${id}.notch.shoulder`, `${called}, shoulder of the notch`],
        [`${id}.notch.slope`, `${called}, slope of the notch`],
        [`${id}.notch.shift`, `${called}, notch lies over by`],
        [`${id}.notch.endGrainFoot`, `${called}, wood left beyond the foot’s notch`],
        [`${id}.notch.endGrainHead`, `${called}, wood left beyond the head’s notch`],
      ] as const
    }),
  )

/** What is marked out before anything is cut: sizes, frame, top, ledges and braces of every leaf. */
export const settingOutGroups = (design: Design): ResultGroup[] =>
  leafGroups(design, (leaf) => {
    const at = leafPrefix[leaf.name]
    return [
      { title: 'Sizes', rows: sizeRows(design, at) },
      { title: 'Frame', rows: frameRows(design, at) },
      { title: 'Where the leaves meet', rows: meetingRows(design, at) },
      { title: 'Top', rows: topRows(design, at), part: 'dimension top rise' },
      { title: 'Top, from the hanging edge', rows: heightRows(design, at), dense: true },
      { title: 'Ledges', rows: ledgeRows(design, at, leaf), part: 'ledge' },
      { title: 'Braces and their notches', rows: braceRows(design, at, leaf), part: 'brace' },
    ]
  })

/** What a board's figures are called, by the ends of their ids, in the order of the columns. */
export const boardFigures = [
  ['x', 'From the hanging edge'],
  ['headHanging', 'Head, hanging side'],
  ['headClosing', 'Head, closing side'],
  ['length', 'Long'],
  ['blank', 'Cut first to'],
] as const
