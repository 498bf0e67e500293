import * as z from 'zod/mini';
import { AppError, notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { proofInHand } from '@/lib/critique/proof-in-hand';
import { idSchema } from '@/shared/schemas/note';
import { claim } from './claim-proof';

/** Says that a proof is marked, or opens it again. It goes out only when the instructor releases it. */
export const finishProof = operation({
  name: 'finish-proof',
  allow: 'mark:give',
  input: z.strictObject({ proof: idSchema, to: z.enum(['done', 'open'], 'A proof is open or done.') }),
  run: async ({ data, now }, { proof: token, to }) => {
    const hand = await proofInHand(data, token);
    const { proof, me, course, exercise, task } = hand;
    if (to === 'done') {
      const unmarked = await unmarkedCriteria(hand);
      if (unmarked.length > 0)
        throw new AppError('INVALID', `Not marked yet: ${unmarked.join(', ')}. Give each a level, then finish.`);
      await claim(data, hand, now);
    }
    if (!task) throw notFound();
    if (to === 'open' && hand.two === 'done') {
      throw new AppError(
        'CONFLICT',
        'Both markers have finished this proof and can see each other’s marks, so these stand as they were given. What should count instead is settled, with a reason, on the page about agreement.',
      );
    }
    if (!(await data.markTasks.setState(task.id, me.id, to, now))) {
      throw new AppError(
        'CONFLICT',
        `${task.marker?.user?.name ?? 'Another marker'} marked this proof; only they can open it again.`,
      );
    }
    await data.audit.record(
      { courseId: course.id, verb: to === 'done' ? 'proof marked' : 'proof reopened', subject: `proof:${proof.id}` },
      now,
    );
    return { state: to };

    async function unmarkedCriteria({ task: at }: typeof hand): Promise<string[]> {
      const [criteria, marks] = await Promise.all([
        data.criteria.ofExercise(exercise.id),
        at ? data.marks.ofTasks([at.id]) : [],
      ]);
      const marked = new Set(
        marks.filter(({ level }) => level !== null).map(({ criterionVersionId }) => criterionVersionId),
      );
      return criteria
        .flatMap(({ versions }) => versions)
        .filter(({ id }) => !marked.has(id))
        .map(({ title }) => `“${title}”`);
    }
  },
});
