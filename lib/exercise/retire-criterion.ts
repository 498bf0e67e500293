import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { criterionOnly } from '@/shared/schemas/criterion';
import { refuseDistanceAlone } from './distance-alone';

/** Takes a criterion out of use; marks given by it stay, and it can be put back. */
export const retireCriterion = operation({
  name: 'retire-criterion',
  allow: 'exercise:plan',
  input: criterionOnly,
  run: async ({ data, now }, { criterionId }) => {
    const criterion = await data.criteria.find(criterionId);
    if (!criterion) throw notFound();
    if (criterion.exercise.state !== 'draft') {
      const all = await data.criteria.ofExercise(criterion.exerciseId);
      refuseDistanceAlone(all.filter(({ id }) => id !== criterionId).map(({ versions }) => versions[0]!));
    }
    await data.criteria.setRetired(criterionId, now);
    return { exerciseId: criterion.exerciseId };
  },
});
