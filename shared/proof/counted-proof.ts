/** What decides which proof of a member counts in a round. */
export type ProofInRound = { id: string; number: number; receivedAt: Date };

export type Counted<Of extends ProofInRound> = {
  proof: Of | null;
  /** Why this one: the last before marking started, or picked by the instructor. */
  why: 'last' | 'chosen' | 'none';
  /** Proofs that came in after marking started and so do not count unless picked. */
  tooLate: Of[];
};

/**
 * The proof that counts: the one the instructor picked, else the last received before marking started.
 * Numbers decide among proofs of one instant. A choice that names no proof of the list is not looked at.
 */
export function countedProof<Of extends ProofInRound>(
  proofs: readonly Of[],
  markingStartedAt: Date | null,
  chosenId: string | null,
): Counted<Of> {
  const tooLate = proofs.filter(
    (proof) => markingStartedAt !== null && proof.receivedAt.getTime() > markingStartedAt.getTime(),
  );
  const chosen = proofs.find((proof) => proof.id === chosenId);
  if (chosen) return { proof: chosen, why: 'chosen', tooLate };
  const inTime = proofs.filter((proof) => !tooLate.includes(proof));
  const last = inTime.reduce<Of | null>((best, proof) => (best === null || isLater(proof, best) ? proof : best), null);
  return { proof: last, why: last === null ? 'none' : 'last', tooLate };
}

const isLater = (one: ProofInRound, other: ProofInRound): boolean => one.number > other.number;
