import type { Job } from '../../shared/job/job.ts'
import type { Uncovered } from '../../shared/papers/requests.ts'
import { bad, good } from '../../shared/problem.ts'
import type { Context, Handler } from './context.ts'
import { missing } from './missing.ts'

/** Something that a person wrote, what it is called, and the entry it stands in; '' where that isn't on the job's own pages. */
type Written = Pick<Uncovered, 'what' | 'field'> & { text: string }

const ofJob = ({ number, title, customer }: Job): Written[] => [
  { what: 'the job’s number', field: '', text: number },
  { what: 'what the job is', field: 'title', text: title },
  { what: 'the customer’s name', field: 'customer.name', text: customer.name },
  { what: 'the customer’s address', field: 'customer.address', text: customer.address },
  { what: 'the customer’s town', field: 'customer.town', text: customer.town },
]

/** Names in the gate: timbers, ironmongery, saws. Each with the path of its entry. */
function ofGate({ entry: { spec } }: Job): Written[] {
  const timber = (['boards', 'ledges', 'braces'] as const).flatMap((part): Written[] => {
    const section = spec[part]?.section
    if (!section) return []
    const field = `${part}.section`
    return [{ what: `the timber of the ${part}`, field, text: `${section.name} ${section.species}` }]
  })
  return [
    ...timber,
    ...(spec.ironmongery ?? []).map(({ name }): Written => ({
      what: 'the ironmongery',
      field: 'ironmongery',
      text: name,
    })),
    ...(spec.workshop?.saws ?? []).map(({ name }): Written => ({
      what: 'a saw’s name',
      field: '',
      text: name,
    })),
  ]
}

function ofWorkshop({ book }: Context): Written[] {
  const { name, business } = book.settings.read()
  const { logo: _logo, ...words } = business
  return [
    { what: 'the workshop’s name', field: '', text: name },
    {
      what: 'what the workshop prints on a customer’s paper',
      field: '',
      text: Object.values(words).join(' '),
    },
  ]
}

/**
 * Letters and signs of a job's and the workshop's own words that no face of the papers has: they would come out as □, and are told before
 * anything is printed. One entry for each place they stand in.
 */
export const uncoveredWords: Handler<'papers.uncovered'> = async (context, { jobId }) => {
  const job = context.book.jobs.open(jobId)
  if (!job) return bad(missing('jobId', 'job'))
  const [{ loadFonts }, { uncovered }] = await Promise.all([
    import('../fonts.ts'),
    import('../paint/wordRuns.ts'),
  ])
  const fonts = await loadFonts()
  return good(
    [...ofJob(job), ...ofGate(job), ...ofWorkshop(context)].flatMap(({ what, field, text }): Uncovered[] => {
      const characters = uncovered(text, fonts)
      return characters.length === 0 ? [] : [{ what, field, characters }]
    }),
  )
}
