import type { Design } from '../../gate/designModel.ts'
import type { GateSpec } from '../../gate/spec.ts'
import { fullSizeKinds, type FullSizeKind } from './template.ts'

/** A kind of full-size sheet for a gate: why is '' where the gate wants it, else why there is none. */
export type FullSizeOffer = { kind: FullSizeKind; name: string; why: string }

/** What each kind is called. */
export const fullSizeNames: Record<FullSizeKind, string> = {
  bevels: 'Bevels',
  notch: 'Notch',
  top: 'Shaped top',
  drilling: 'Drilling',
  rod: 'Setting-out rod',
}

function whyNot(kind: FullSizeKind, spec: GateSpec, fittings: Design['fittings']): string {
  const { braces, ledges, top } = spec
  switch (kind) {
    case 'bevels':
      return braces || ledges.end.cut !== 'square' || top.shape === 'raked'
        ? ''
        : 'No brace, and the ledge ends are square.'
    case 'notch':
      if (!braces) return 'There is no brace.'
      return braces.ends === 'notched' ? '' : 'The brace’s ends are flush.'
    case 'top':
      return top.shape === 'level' ? 'The top is level.' : ''
    case 'drilling':
      return fittings.some(({ drillings }) => drillings.some(({ places }) => places.length > 0))
        ? ''
        : 'No ironmongery with holes is listed.'
    case 'rod':
      return ''
  }
}

/** Every kind of full-size sheet, wanted by this gate or not. */
export const fullSizeOffers = (spec: GateSpec, { fittings }: Pick<Design, 'fittings'>): FullSizeOffer[] =>
  fullSizeKinds.map((kind) => ({ kind, name: fullSizeNames[kind], why: whyNot(kind, spec, fittings) }))
