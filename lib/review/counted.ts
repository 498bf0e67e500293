import * as z from 'zod/mini';
import { AppError } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { proofContext, roundContext } from './context';
import type { ScopedData } from '@/lib/data';
import { retryOnConflict } from '@/lib/data/retry';
import { type Counted, countedProof } from '@/shared/marking/marks';
import { proofOnly, roundByNumber } from '@/shared/schemas/critique';

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

/** From now on the proof that counts stays the one it is, whatever students send after. */
export const beginMarking = operation({
  name: 'begin-marking',
  allow: 'critique:write',
  input: z.extend(roundByNumber, { version: z.coerce.number().check(z.int(), z.gte(0)) }),
  run: async ({ data, now }, { exerciseId, roundNumber, version }) => {
    const { round, course } = await roundContext(data, exerciseId, roundNumber);
    if (round.markingStartedAt !== null) return { startedAt: round.markingStartedAt };
    return data.transaction(async (inside) => {
      if (!(await inside.markTasks.startMarking(round.id, version, now))) {
        throw new AppError(
          'CONFLICT',
          'The round was changed while you looked at it. The page shows it as it is now; begin marking from there.',
        );
      }
      await inside.audit.record({ courseId: course.id, verb: 'marking begun', subject: `round:${round.id}` }, now);
      return { startedAt: now };
    });
  },
});

/**
 * Lets a proof count in place of the last one sent before marking began. What was released stays as it is; a new
 * release follows the choice.
 */
export const chooseProof = operation({
  name: 'choose-proof',
  allow: 'release:make',
  input: proofOnly,
  run: ({ data, now }, { proof: token }) =>
    retryOnConflict(async () => {
      const { proof, round, me, course } = await proofContext(data, token);
      await data.markTasks.choose({
        roundId: round.id,
        memberId: proof.memberId,
        proofId: proof.id,
        chosenById: me.id,
        now,
      });
      await data.audit.record({ courseId: course.id, verb: 'proof chosen', subject: `proof:${proof.id}` }, now);
      return { roundNumber: round.number, exerciseId: round.exerciseId };
    }),
});
