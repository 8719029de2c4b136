import type { Design } from '../shared/gate/designModel.ts'
import type { Figure } from '../shared/gate/figures.ts'
import type { HangingLeaf } from '../shared/gate/leaf.ts'
import { leafPrefix } from '../shared/gate/leafPrefix.ts'
import { toHalf } from '../shared/cutting/cutList.ts'
import { writeInches, writeShortMm } from '../shared/units/writeLength.ts'
import { capital, writeAngle } from './format.ts'

/** A line of what was worked out: its words, its figure's id, the figure as shown, and the same in the other unit or ''. */
export type ResultRow = { name: string; id: string; shown: string; also: string }

/** Lines that belong together, under a name of their own. dense: many short ones, to be set in columns. part lights in the drawing. */
export type ResultGroup = { title: string; rows: ResultRow[]; dense?: boolean; part?: string }

/** An id of a figure and what it is called. */
export type Named = readonly (readonly [id: string, name: string])[]

const to = (value: number, places: number): string =>
  (Math.round(value * 10 ** places) / 10 ** places + 0).toFixed(places).replace('-', '−')

/** A result as a person weighs it up: lengths to a tenth of a mm, masses to a tenth of a kg, forces whole. */
export function writeResult({ value, unit }: Pick<Figure, 'value' | 'unit'>): string {
  if (unit === '°') return writeAngle(value)
  if (unit === 'N') return `${to(value, 0)} N`
  if (unit === 'no.') return to(value, 0)
  if (unit === 'N/mm²' || unit === 'm²' || unit === '') return `${to(value, 2)} ${unit}`.trim()
  return `${to(value, 1)} ${unit}`.trim()
}

/** Under half an inch a sixteenth says nothing: such a length stands in mm alone. */
const inches = ({ value, unit }: Pick<Figure, 'value' | 'unit'>): string =>
  unit === 'mm' && Math.abs(value) >= 12.7 ? writeInches(value) : ''

/** A length as it is marked out and cut: to the half millimetre, as drawing and cut list say it. Anything else as it is weighed up. */
export const writeCut = (figure: Pick<Figure, 'value' | 'unit'>): string =>
  figure.unit === 'mm' ? `${writeShortMm(toHalf(figure.value))} mm` : writeResult(figure)

/** The lines of what is marked out, rounded as it is cut. */
export const cutRowsOf = (design: Design, named: Named): ResultRow[] =>
  rowsOf(design, named).map((row) => {
    const figure = design.figures[row.id]
    if (figure?.unit !== 'mm') return row
    const cut = { unit: 'mm', value: toHalf(figure.value) }
    return { ...row, shown: writeCut(figure), also: inches(cut) }
  })

/** The lines of those figures that a design has. */
export function rowsOf(design: Design, named: Named): ResultRow[] {
  return named.flatMap(([id, name]) => {
    const figure = design.figures[id]
    return figure ? [{ id, name: capital(name), shown: writeResult(figure), also: inches(figure) }] : []
  })
}

/** A hinge by its place, bottom up. */
const hingeWord = (index: number, count: number): string => {
  if (index === count - 1) return 'top hinge, height'
  return index === 0 ? 'bottom hinge, height' : 'middle hinge, height'
}

const pieces = [
  ['boards', 'boards'],
  ['ledges', 'ledges'],
  ['braces', 'braces'],
  ['frame', 'frame'],
] as const

function weightRows(design: Design, leaf: HangingLeaf): ResultRow[] {
  const at = leafPrefix[leaf.name]
  return rowsOf(design, [
    [`${at}leaf.mass`, 'weight, ± 10 %'],
    ...pieces.flatMap(
      ([id, name]) =>
        [
          [`${at}weight.${id}`, `${name}, of it`],
          [`${at}weight.${id}.density`, `${name}, density reckoned with`],
        ] as const,
    ),
    [`${at}weight.ironmongery.hanging`, 'ironmongery at the hanging side'],
    [`${at}weight.ironmongery.closing`, 'ironmongery at the closing side'],
    [`${at}leaf.centreX`, 'centre of it, from the hanging edge'],
    [`${at}leaf.centreY`, 'centre of it, from the foot'],
    [`${at}leaf.area`, 'area in the wind'],
    [`${at}leaf.wind`, 'push of the gust on it, shut'],
  ])
}

function hingeRows(design: Design, leaf: HangingLeaf): ResultRow[] {
  const at = leafPrefix[leaf.name]
  return rowsOf(design, [
    [`${at}hinges.pull`, 'pull on the top hinge, push on the bottom one'],
    [`${at}hinges.share`, 'weight on each hinge'],
    [`${at}hinges.whole`, 'weight on one, if it takes it all'],
    ...leaf.hinges.map(
      (_, index) => [`${at}hinge.${index + 1}.y`, hingeWord(index, leaf.hinges.length)] as const,
    ),
    [`${at}fitting.hinges.spacing`, 'from the bottom hinge to the top one'],
    [`${at}fitting.hinges.reckonedKg`, 'leaf that the hinges are reckoned to carry'],
  ])
}

const swingRows = (design: Design, leaf: HangingLeaf): ResultRow[] => {
  const at = leafPrefix[leaf.name]
  return rowsOf(design, [
    [`${at}swing.gap`, 'least closing gap to swing clear'],
    [`${at}swing.bevel`, 'bevel of the closing edge that helps'],
    [`${at}swing.bevelledGap`, 'least closing gap with that bevel'],
    [`${at}swing.grown`, 'wider at the wettest by'],
    [`${at}swing.ground`, 'least gap over the ground'],
    [`${at}swing.groundAngle`, 'ground is highest at'],
  ])
}

const braceRows = (design: Design, leaf: HangingLeaf): ResultRow[] =>
  rowsOf(
    design,
    leaf.loads.flatMap(({ name }) => {
      const id = `${leafPrefix[leaf.name]}brace.${name}`
      const called = name === 'single' ? 'brace' : `${name} brace`
      return [
        [`${id}.load`, `load on the head of the ${called}`],
        [`${id}.thrust`, `thrust along the ${called}`],
        [`${id}.alongLedge`, `${called} pushes along the ledge`],
        [`${id}.hold`, `what holds the ${called} there`],
        [`${id}.toeStress`, `press of the ${called} on its ledge`],
        [`${id}.toeAllowed`, `press that the ledge may bear`],
      ] as const
    }),
  )

/** Groups of one leaf, under the leaf's own name where there are two; those with nothing in them are left out. */
export const leafGroups = (
  design: Design,
  groupsOf: (leaf: HangingLeaf) => readonly ResultGroup[],
): ResultGroup[] =>
  design.leaves.flatMap((leaf) =>
    groupsOf(leaf)
      .filter(({ rows }) => rows.length > 0)
      .map((group) => ({
        ...group,
        title:
          design.leaves.length === 1
            ? group.title
            : `${capital(leaf.name)}: ${group.title.charAt(0).toLowerCase()}${group.title.slice(1)}`,
      })),
  )

/** Weight, hinges, braces and swing of every leaf. */
export const hangingGroups = (design: Design): ResultGroup[] =>
  leafGroups(design, (leaf) => [
    { title: 'Weight', rows: weightRows(design, leaf) },
    { title: 'Hinges', rows: hingeRows(design, leaf), part: 'hinge' },
    { title: 'Braces', rows: braceRows(design, leaf), part: 'brace' },
    { title: 'Swing', rows: swingRows(design, leaf) },
  ])

/** One line a kind of figure, one figure an air. id of the figure: 'movement.driest.jointGap'. */
export type MovementRow = { name: string; airs: { id: string; shown: string }[] }

/** The airs that movement is told for, in the order of the columns. */
export const airs = ['shop', 'driest', 'wettest'] as const

/** How the boarding moves: what it comes to in the shop, at the driest and at the wettest. */
export const movementRows = (design: Design): MovementRow[] =>
  (
    [
      ['moisture', 'Moisture in the timber'],
      ['leafWidth', 'Width of the leaf'],
      ['boardChange', 'Change of one board'],
      ['jointGap', 'Gap at a joint'],
      ['tongueReach', 'Tongue in its groove'],
    ] as const
  )
    .map(([key, name]) => ({
      name,
      airs: airs.flatMap((air) => {
        const id = `movement.${air}.${key}`
        const figure = design.figures[id]
        return figure ? [{ id, shown: writeResult(figure) }] : []
      }),
    }))
    .filter((row) => row.airs.length > 0)
