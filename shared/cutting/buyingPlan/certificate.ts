import type { Values } from './closed.ts'
import type { ListProof as CaseProof } from './closing.ts'
import type { Normalised } from './normalise.ts'
import type { Certificate, ListCase, ListProof, Offer, ProofRow } from './planModel.ts'
import type { Proof } from './proof.ts'
import type { Kind, SectionWork } from './sectionWork.ts'
import type { ClosedProof } from './stages.ts'

const offerOf = ({ from, stock, pence }: Kind): Offer => ({ from, stock: stock / 10, pence })

/** Cases row by row, in the certificate's words; values that several cases share are written once. */
function casesOf(proof: CaseProof, values: Values[]): ListCase[] {
  const known = new Map<number[], number>()
  const rows: ListCase[] = []
  const write = (one: CaseProof): void => {
    if ('duals' in one) {
      const by = known.get(one.duals) ?? values.push({ duals: one.duals, slots: one.slots }) - 1
      known.set(one.duals, by)
      rows.push({ by })
      return
    }
    const { fewer, more, ...divided } = one
    rows.push(divided)
    write(fewer)
    write(more)
  }
  write(proof)
  return rows
}

function listOf({ most, cuts, cases }: ClosedProof): ListProof {
  const values: Values[] = []
  return { most, cuts, cases: casesOf(cases, values), values }
}

/** The search's proof row by row, with duals for every part. */
function rowsOf(proof: Proof): ProofRow[] {
  if ('stock' in proof) {
    const { stock, upTo, fewer, more } = proof
    return [{ offer: stock, upTo }, ...rowsOf(fewer), ...rowsOf(more)]
  }
  if ('closed' in proof) return [{ duals: proof.closed.duals, list: listOf(proof.closed) }]
  return [{ duals: proof.duals }]
}

/** What shows a section's bound, in words that stand by themselves beside the request. */
export function certificateOf(
  work: SectionWork,
  { stocks, beaten }: Normalised,
  { cost, bound, proof }: { cost: number; bound: number; proof: Proof },
): Certificate {
  const named = stocks.map((of, stock) => [...of, ...(beaten[stock] ?? [])])
  const idle = work.kinds.flatMap(({ most }, kind) =>
    most > 0 && !named.flat().includes(kind) ? [kind] : [],
  )
  return {
    section: work.section,
    cost,
    bound,
    parts: work.parts.map(({ length }) => length / 10),
    offers: [...named, ...(idle.length > 0 ? [idle] : [])].map((of) =>
      of.map((kind) => offerOf(work.kinds[kind] as Kind)),
    ),
    proof: rowsOf(proof),
  }
}
