import type { UsualGate } from '../../shared/gate/usualGate.ts'
import { sizeText } from '../jobs/sizeText.ts'

const kinds = {
  ledged: 'ledged',
  'ledged-braced': 'ledged and braced',
  'framed-ledged-braced': 'framed, ledged and braced',
}

/** How a usual gate is made, in a line: 'a pair, framed, ledged and braced, bowed top, ex 25 × 125 T&G V; kept at 930 × 1830 mm'. */
export function usualWords({ spec, unit }: UsualGate): string {
  const leaves = spec.stable ? 'stable door, ' : spec.leaves === 2 ? 'a pair, ' : ''
  const top = spec.top.shape === 'level' ? '' : `, ${spec.top.shape} top`
  const { size } = spec
  const [width, height] = size.from === 'leaf' ? [size.width, size.height] : [size.widths[0], size.heights[0]]
  return `${leaves}${kinds[spec.construction]}${top}, ${spec.boards.section.name}; drawn at ${sizeText({ width, height }, unit)}`
}
