import type { PromiseSpan } from '../shared/job/dueSpan.ts'
import type { HiddenPlace } from '../shared/job/found.ts'
import type { Stage } from '../shared/job/job.ts'

/** Stages as they are said. */
export const stageWords: Record<Stage, string> = {
  enquiry: 'Enquiry',
  surveyed: 'Surveyed',
  designed: 'Designed',
  quoted: 'Quoted',
  ordered: 'Ordered',
  making: 'Making',
  hung: 'Hung',
}

/** When a job is promised, as it is said. */
export const spanWords: Record<PromiseSpan, string> = {
  late: 'Late',
  'this week': 'This week',
  'next week': 'Next week',
  later: 'Later',
  'no day': 'No day promised',
}

/** Where in a job a word was found that its line doesn't show. */
export const placeWords: Record<HiddenPlace, string> = {
  notes: 'Notes',
  telephone: 'Telephone',
  address: 'Address',
  timber: 'Timber',
  kind: 'Kind',
}

/** What each entry of a job is called on its screens, by its path: for telling which entry two windows both wrote in. */
const entryWords: Record<string, string> = {
  title: 'What it is',
  stage: 'Stage',
  due: 'Promised',
  notes: 'Notes',
  unit: 'Unit of the job',
  'customer.name': 'Customer’s name',
  'customer.address': 'Address',
  'customer.town': 'Town',
  'customer.phone': 'Telephone',
  'customer.email': 'Email',
  'spec.size.width': 'Width of the leaf',
  'spec.size.height': 'Height of the leaf',
  'spec.size.widths.0': 'Width of the opening at the top',
  'spec.size.widths.1': 'Width of the opening in the middle',
  'spec.size.widths.2': 'Width of the opening at the foot',
  'spec.size.heights.0': 'Height of the opening at the hanging side',
  'spec.size.heights.1': 'Height of the opening at the closing side',
  'spec.size.meetingGap': 'Gap between the leaves',
  'spec.hung': 'Hung',
  'spec.construction': 'Construction',
  'spec.boards.section': 'Boards',
  'spec.boards.gap': 'Gap between boards',
  'spec.boards.rip': 'Ripped board',
  'spec.ledges.section': 'Ledges',
  'spec.ledges.count': 'How many ledges',
  'spec.ledges.heights': 'Ledge heights',
  'spec.ledges.end': 'Ledge ends',
  'spec.braces.section': 'Brace',
  'spec.fixings.kind': 'Screws or nails',
  'spec.fixings.diameter': 'Screw size',
  'spec.fixings.lengths': 'Lengths in stock',
}

/** The name of an entry, by its path; its group's where it has none of its own. */
export function entryWord(path: string): string {
  const own = entryWords[path]
  if (own) return own
  const group = path.replace(/^spec\./, '').split('.')[0] ?? ''
  const groups: Record<string, string> = {
    size: 'Sizes',
    boards: 'Boards',
    ledges: 'Ledges',
    braces: 'Brace',
    fixings: 'Fixings',
    top: 'Top',
    foot: 'Foot',
    leaves: 'Leaves',
    meeting: 'Meeting edge',
    stable: 'Stable door',
    survey: 'Survey of the opening',
    frame: 'Frame',
    climate: 'Weather',
    timbers: 'Timber',
    site: 'Site',
    ironmongery: 'Ironmongery',
    opens: 'Opens',
    openTo: 'Opens to',
    workshop: 'Tools',
    customer: 'Customer',
  }
  return groups[group] ?? 'An entry'
}
