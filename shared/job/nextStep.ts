import type { BoardCard } from './board.ts'

/** Where in a job, or in the program, its next step is done. */
export type StepPlace = 'gate' | 'price' | 'quotations' | 'papers' | 'timber' | 'order'

/** What a job wants next: words beginning with a verb, the order they end in, if any, and where that is done. waits: it is another's turn. */
export type NextStep = { words: string; order?: string; at: StepPlace; waits?: boolean }

/** The order a job's timber stands on, as far as the next step goes by it. */
export type StepOrder = { number: string; state: 'placed' | 'received' | 'cut' | 'cancelled' }

type Asked = Pick<BoardCard, 'stage' | 'width' | 'height' | 'accepted' | 'carded' | 'quotedUntil'>

function afterQuotation({ accepted, quotedUntil }: Asked, today: string): NextStep {
  if (accepted) return { words: 'Order the timber', at: 'timber' }
  if (quotedUntil === null) return { words: 'Send the quotation', at: 'quotations' }
  if (quotedUntil < today) return { words: 'Quote again: the price has run out', at: 'quotations' }
  return { words: 'Ask for an answer', at: 'quotations', waits: true }
}

function withTimber({ carded }: Asked, order: StepOrder | undefined): NextStep {
  if (!order) return { words: 'Order the timber', at: 'timber' }
  if (order.state === 'placed')
    return { words: 'Book in order', order: order.number, at: 'order', waits: true }
  return carded ? { words: 'Start making', at: 'papers' } : { words: 'Issue the card', at: 'papers' }
}

/**
 * What a job's stage wants next. today ISO; order: the one that holds its timber, if any. A job designed whose customer was sent a quotation is
 * taken for quoted, whatever its stage says.
 */
export function nextStep(job: Asked, today: string, order?: StepOrder): NextStep {
  const sized = job.width !== null && job.height !== null
  switch (job.stage) {
    case 'enquiry':
      return { words: 'Measure the opening', at: 'gate' }
    case 'surveyed':
      return sized ? { words: 'Design the gate', at: 'gate' } : { words: 'Enter the sizes', at: 'gate' }
    case 'designed':
    case 'quoted':
      return afterQuotation(job, today)
    case 'ordered':
      return withTimber(job, order)
    case 'making':
      return job.carded
        ? { words: 'Make and hang it', at: 'papers' }
        : { words: 'Issue the card', at: 'papers' }
    case 'hung':
      return { words: 'Nothing more', at: 'papers' }
  }
}
