import { isLit } from './drawing/svgPainter.ts'
import { takeHand, unfold } from './takeHand.ts'

/** The part of the drawing that each entry of the form speaks of, by the entry's path. */
export const partOfField: Record<string, string> = {
  'size.width': 'dimension width',
  'size.height': 'dimension height',
  'size.widths.0': 'dimension width',
  'size.widths.1': 'dimension width',
  'size.widths.2': 'dimension width',
  'size.heights.0': 'dimension height',
  'size.heights.1': 'dimension height',
  hung: 'hinge line',
  'boards.section': 'board',
  'boards.section.thickness': 'dimension board thickness',
  'boards.section.width': 'dimension boards',
  'boards.gap': 'dimension gap',
  'boards.rip': 'dimension boards',
  'ledges.section': 'ledge',
  'ledges.section.thickness': 'dimension ledge thickness',
  'ledges.section.width': 'dimension ledge heights',
  'ledges.count': 'ledge',
  'ledges.heights': 'dimension ledge heights',
  'ledges.heights.0': 'bottom ledge, dimension foot to bottom ledge',
  'ledges.heights.1': 'middle ledge, dimension bay 1',
  'ledges.heights.2': 'top ledge, dimension bay 2',
  'ledges.topSection.width': 'dimension top ledge width',
  'ledges.hangingInset': 'dimension hanging inset',
  'ledges.closingInset': 'dimension closing inset',
  'ledges.end': 'ledge',
  'braces.section': 'brace',
  'braces.run': 'brace',
  'braces.footSetback': 'brace',
  'braces.headSetback': 'brace',
  'braces.ends': 'brace',
  'braces.notchDepth': 'dimension notch depth',
  'size.meetingGap': 'dimension meeting gap',
  'size.groundGap': 'dimension ground gap',
  'meeting.lap': 'dimension lap',
  'stable.gap': 'gap between the halves',
  'top.rise': 'dimension top rise',
  'top.shape': 'dimension top rise',
  foot: 'foot fall',
  'frame.stile.width': 'stile',
  'frame.topRail.width': 'top rail',
  'frame.tenon': 'dimension tenon',
  'frame.rebate': 'rebate',
  'ironmongery.0': 'hinge',
  'site.slopeAlong': 'ground',
  'site.slopeAcross': 'ground',
  'site.pinInset': 'pin',
  openTo: 'swing',
  'fixings.kind': 'fixings',
  'fixings.diameter': 'fixings',
  'fixings.lengths': 'fixings',
}

/** Whether two names speak of the same part, or one of a part of the other: 'ledge' and 'bottom ledge', never 'board 3' and 'board 13'. */
export const touches = (one: string | undefined, other: string | null): boolean =>
  one !== undefined &&
  other !== null &&
  (one.split(', ').some((part) => isLit(part, other)) || other.split(', ').some((part) => isLit(part, one)))

/** The entry to go to when a part of the drawing is pressed: the one that speaks of it most closely. */
export function fieldOfPart(part: string): string | undefined {
  const fields = Object.entries(partOfField)
  return (fields.find(([, own]) => own === part) ?? fields.find(([, own]) => touches(own, part)))?.[0]
}

/** A path and those above it, nearest first; a size of the leaf is asked as the opening's where that was measured. */
const nearest = (path: string): string[] => {
  const keys = path.split('.')
  const above = keys.map((_, at) => keys.slice(0, keys.length - at).join('.'))
  return above.flatMap((one) => (/^size\.(width|height)$/.test(one) ? [one, `${one}s`] : [one]))
}

/**
 * Puts the keyboard on the entry for a path, opening what hides it; on the nearest entry above or below when it has none of
 * its own. Answers whether one was found.
 */
export function focusField(path: string): boolean {
  const all = [...document.querySelectorAll<HTMLElement>('[data-field]')]
  const nameOf = (element: HTMLElement): string => element.dataset['field'] ?? ''
  const found = nearest(path)
    .map((one) => all.find((el) => nameOf(el) === one) ?? all.find((el) => nameOf(el).startsWith(`${one}.`)))
    .find((el) => el !== undefined)
  if (!found) return false
  unfold(found)
  takeHand(found)
  return true
}
