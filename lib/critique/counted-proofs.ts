import type { ScopedData } from '@/lib/data';
import { countedProof, type Counted } from '@/shared/proof/counted-proof';

type SentProof = { id: string; memberId: string; number: number; receivedAt: Date };
export type CountedOfMember = Counted<SentProof> & { memberId: string };

/** For each member who sent something in the round: the proof that counts, and why. */
export async function countedProofs(
  data: ScopedData,
  round: { id: string; markingStartedAt: Date | null },
): Promise<CountedOfMember[]> {
  const [proofs, choices] = await Promise.all([data.markTasks.proofsOf(round.id), data.markTasks.choicesOf(round.id)]);
  const chosen = new Map(choices.map(({ memberId, proofId }) => [memberId, proofId]));
  const byMember = new Map<string, SentProof[]>();
  for (const proof of proofs) byMember.set(proof.memberId, [...(byMember.get(proof.memberId) ?? []), proof]);
  return [...byMember].map(([memberId, own]) => ({
    memberId,
    ...countedProof(own, round.markingStartedAt, chosen.get(memberId) ?? null),
  }));
}
