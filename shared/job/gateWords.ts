import { measuredSizes } from '../gate/measuredSizes.ts'
import type { DraftSpec } from '../gate/spec.ts'

/**
 * From which sizes on a gate is remembered as wide, narrow, tall, short, big or small: mm of the leaf, or of the opening where only that was measured;
 * of both leaves together for a pair; m² for big and small. Common practice: garden gates are 900 to 915 wide and 1800 high (six foot), so that what is
 * a hand more or less than that is remembered for it; a gate no higher than the hip (1200) is a short one.
 */
export const remembered = { wide: 1000, narrow: 800, tall: 1800, short: 1200, big: 1.9, small: 1.1 } as const

const constructionWords: Record<DraftSpec['construction'], string> = {
  ledged: 'ledged boarded',
  'ledged-braced': 'ledged braced boarded',
  'framed-ledged-braced': 'framed ledged braced boarded',
}

const topWords: Record<DraftSpec['top']['shape'], string> = {
  level: 'level straight flat',
  raked: 'raked sloping',
  bowed: 'bowed arched curved',
  dipped: 'dipped hollow curved',
}

/** The least size given in one direction; undefined until there is one. */
function least(size: DraftSpec['size'], direction: 'width' | 'height'): number | undefined {
  const given = measuredSizes(size).flatMap(({ path, mm }) =>
    path.startsWith(`size.${direction}`) && mm !== null ? [mm] : [],
  )
  return given.length === 0 ? undefined : Math.min(...given)
}

/** What its sizes are remembered as: 'wide tall big' for 1100 × 2000, nothing for a gate of the usual sizes. */
export function sizeWordsOf({ size, leaves }: Pick<DraftSpec, 'size' | 'leaves'>): string[] {
  const across = size.from === 'leaf' ? leaves : 1
  const [width, height] = [least(size, 'width'), least(size, 'height')]
  const whole = width === undefined ? undefined : width * across
  const area = whole === undefined || height === undefined ? undefined : (whole * height) / 1e6
  const over = (value: number | undefined, limit: number): boolean => value !== undefined && value >= limit
  const under = (value: number | undefined, limit: number): boolean => value !== undefined && value <= limit
  return [
    over(whole, remembered.wide) ? ['wide'] : [],
    under(whole, remembered.narrow) ? ['narrow'] : [],
    over(height, remembered.tall) ? ['tall', 'high'] : [],
    under(height, remembered.short) ? ['short', 'low'] : [],
    over(area, remembered.big) ? ['big', 'large'] : [],
    under(area, remembered.small) ? ['small', 'little'] : [],
  ].flat()
}

const timbersOf = ({ boards, ledges, braces, frame }: DraftSpec): string[] =>
  [boards.section, ledges.section, ledges.topSection, braces?.section, frame?.stile, frame?.topRail].flatMap(
    (section) => (section ? [section.species] : []),
  )

/**
 * The words that a gate is remembered by, each once, in small letters: how it is made, its timbers, its top, its leaves, its ironmongery by kind and name,
 * and what its sizes are remembered as. A wide oak gate of the plain kind: 'ledged braced boarded single level straight flat european oak wide'.
 */
export function gateWords(spec: DraftSpec): string {
  const said = [
    constructionWords[spec.construction],
    spec.leaves === 2 ? 'pair double' : 'single',
    ...(spec.stable ? ['stable'] : []),
    topWords[spec.top.shape],
    ...timbersOf(spec),
    ...spec.ironmongery.flatMap(({ kind, name }) => [kind, name]),
    ...sizeWordsOf(spec),
  ]
  return [...new Set(said.flatMap((words) => words.toLowerCase().split(/\s+/)))].join(' ')
}
