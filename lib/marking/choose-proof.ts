import { operation } from '@/lib/access/operation';
import { retryOnConflict } from '@/lib/data/retry';
import { proofInHand } from '@/lib/critique/proof-in-hand';
import { proofOnly } from '@/shared/schemas/critique';

/** Lets a proof count in place of the last one sent before marking began. What was released stays as it is; a new release follows the choice. */
export const chooseProof = operation({
  name: 'choose-proof',
  allow: 'release:make',
  input: proofOnly,
  run: ({ data, now }, { proof: token }) =>
    retryOnConflict(async () => {
      const { proof, round, me, course } = await proofInHand(data, token);
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
