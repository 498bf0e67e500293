import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { criterionOnly } from '@/shared/schemas/criterion';

/** Puts a criterion back that was taken out of use. */
export const restoreCriterion = operation({
  name: 'restore-criterion',
  allow: 'exercise:plan',
  input: criterionOnly,
  run: async ({ data }, { criterionId }) => {
    const criterion = await data.criteria.find(criterionId);
    if (!criterion || !(await data.criteria.setRetired(criterionId, null))) throw notFound();
    return { exerciseId: criterion.exerciseId };
  },
});
