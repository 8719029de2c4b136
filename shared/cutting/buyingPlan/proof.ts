import type { ClosedProof } from './stages.ts'

/**
 * A part of the certificate: divided by how many of a stock are bought, or closed by one value a part, or past that by a list of patterns.
 */
export type Proof =
  | { stock: number; upTo: number; fewer: Proof; more: Proof }
  | { duals: number[]; bound: number }
  | { closed: ClosedProof }

/** The least of what a proof's cases were closed with, pence; a case that was stopped before it had duals shows nothing. */
export function boundShownBy(proof: Proof): number {
  if ('stock' in proof) return Math.min(boundShownBy(proof.fewer), boundShownBy(proof.more))
  if ('closed' in proof) return proof.closed.bound
  return Math.max(0, proof.bound)
}
