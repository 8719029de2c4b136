import { fillingScale } from '../../shared/drawing/fitScale.ts'
import { gateDrawings } from '../../shared/drawing/gateDrawings.ts'
import { layOut } from '../../shared/drawing/layOut.ts'
import { design } from '../../shared/gate/design.ts'
import { parseSpec } from '../../shared/gate/parseSpec.ts'
import type { GateSpec } from '../../shared/gate/spec.ts'

/** The room of the large drawing on a laptop's screen, mm of its paper. */
const room = { width: 230, height: 150 }

/**
 * What one key in a size field sets going: the spec read, the whole gate worked out, its three views drawn and laid out. Gives the
 * number of marks to paint, so that nothing of it can be left out.
 */
export function keystroke(spec: unknown): number {
  const read = parseSpec(spec)
  if (!read.ok) throw new RangeError('the bench needs specs that can be read')
  const outcome = design(read.value)
  if (!outcome.made) return outcome.stopped.checks.length
  const views = Object.values(gateDrawings(read.value, outcome.design, 'mm'))
  return views.reduce(
    (sum, view) => sum + layOut(view, { ...room, scale: fillingScale(view, room) }).primitives.length,
    0,
  )
}

/** Sizes as they grow under the keys: each spec over and over, a little wider and higher every time. */
export function typedSpecs(specs: readonly GateSpec[], count: number): GateSpec[] {
  return Array.from({ length: count }, (_, key) => {
    const spec = specs[key % specs.length] as GateSpec
    if (spec.size.from !== 'leaf') return spec
    const { width, height } = spec.size
    return {
      ...spec,
      size: { ...spec.size, width: width + ((key * 7) % 90), height: height + ((key * 13) % 120) },
    }
  })
}

/** How long each keystroke took, ms, after a warm-up that isn't counted. */
export function timeKeystrokes(specs: readonly GateSpec[], count: number): number[] {
  const typed = typedSpecs(specs, count)
  for (const spec of typed.slice(0, Math.min(300, count))) keystroke(spec)
  return typed.map((spec) => {
    const start = performance.now()
    keystroke(spec)
    return performance.now() - start
  })
}
