import { operation } from '@/lib/access/operation';
import { notFound } from '@/lib/access/errors';
import { proofInHand } from '@/lib/critique/proof-in-hand';
import { proofOnly } from '@/shared/schemas/critique';

/** Lets go of a proof, so that another marker can take it at once. Marks and notes stay. */
export const giveBackProof = operation({
  name: 'give-back-proof',
  allow: 'mark:give',
  input: proofOnly,
  run: async ({ data, now: _now }, { proof: token }) => {
    const { task, me } = await proofInHand(data, token);
    if (!task) throw notFound();
    return { givenBack: await data.markTasks.giveBack(task.id, me.id) };
  },
});
