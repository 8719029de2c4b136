import type { Place } from '../stores/place.ts'

/** The drawings that a topic may show. */
export type HelpDrawing = 'parts' | 'opening' | 'brace' | 'boards' | 'ends' | 'rack'

/** A heading with what is said under it: paragraphs, or steps in their order. */
export type HelpPart = { heading: string; says?: string[]; steps?: string[]; drawing?: HelpDrawing }

/** One thing that help tells of. also: words it is looked for by beside its own. */
export type Topic = { id: string; title: string; lead: string; also: string; parts: HelpPart[] }

type JobPart = Extract<Place, { name: 'job' }>['part']

const ofJobPart: Partial<Record<JobPart, string>> = {
  gate: 'gate',
  price: 'price',
  papers: 'papers',
  notes: 'notes',
}
const ofPlace: Partial<Record<Place['name'], string>> = {
  jobs: 'jobs',
  cards: 'papers',
  prices: 'prices',
  workshop: 'workshop',
  estimates: 'took',
}

/** The topic that tells of where a person stands. */
export function topicOf(place: Place): string {
  if (place.name === 'job') return place.sheet === 'took' ? 'took' : (ofJobPart[place.part] ?? 'job')
  if (place.name === 'timber') return place.sheet === 'rack' || place.sheet === 'count' ? 'rack' : 'timber'
  return ofPlace[place.name] ?? 'jobs'
}
