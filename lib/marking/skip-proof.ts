import * as z from 'zod/mini';
import { operation } from '@/lib/access/operation';
import { proofInHand } from '@/lib/critique/proof-in-hand';
import { retryOnConflict } from '@/lib/data/retry';
import { idSchema } from '@/shared/schemas/note';

/** Puts a proof off: it comes last for this marker, at once free for others. Or takes it up again. */
export const skipProof = operation({
  name: 'skip-proof',
  allow: 'mark:give',
  input: z.strictObject({
    proof: idSchema,
    to: z.enum(['skipped', 'taken-up'], 'A proof is skipped or taken up again.'),
  }),
  run: ({ data, now }, { proof: token, to }) =>
    retryOnConflict(async () => {
      const { proof, task, me, round } = await proofInHand(data, token);
      if (to === 'taken-up') await data.markSkips.remove(proof.id, me.id);
      else {
        if (!(await data.markSkips.find(proof.id, me.id))) await data.markSkips.create(proof.id, me.id, now);
        if (task) await data.markTasks.giveBack(task.id, me.id);
      }
      return { exerciseId: round.exerciseId, roundNumber: round.number, to };
    }),
});
