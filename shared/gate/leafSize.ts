import { workshopSetting, type Figures } from './figures.ts'
import type { GateSpec } from './spec.ts'
import { figure } from './worked.ts'

export type LeafSize = { width: number; height: number }

/** Size of the one leaf in mm, as entered. */
export function leafSize(spec: GateSpec): { size: LeafSize; figures: Figures } {
  if (spec.size.from !== 'leaf')
    throw new RangeError('leafSize takes leaf sizes; sizes from an opening are refused before')
  const { width, height } = spec.size
  const entered = (value: number) =>
    figure(value, 'mm', { formula: 'as entered', inputs: { entered: value }, source: workshopSetting })
  return {
    size: { width, height },
    figures: {
      'leaf.width': entered(width),
      'leaf.height': entered(height),
      'leaf.diagonal': figure(Math.hypot(width, height), 'mm', {
        formula: '√(width² + height²)',
        inputs: { width, height },
        source: 'plane geometry',
      }),
    },
  }
}
