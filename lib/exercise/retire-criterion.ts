import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { criterionOnly } from '@/shared/schemas/criterion';
import { refuseDistanceAlone } from './distance-alone';
import { withExerciseHeld } from './with-exercise-held';

/** Takes a criterion out of use; marks given by it stay, and it can be put back. */
export const retireCriterion = operation({
  name: 'retire-criterion',
  allow: 'exercise:plan',
  input: criterionOnly,
  run: async (context, { criterionId }) => {
    const found = await context.data.criteria.find(criterionId);
    if (!found) throw notFound();
    return withExerciseHeld(context, found.exerciseId, async (data) => {
      const exercise = await data.exercises.find(found.exerciseId);
      const all = await data.criteria.ofExercise(found.exerciseId);
      if (exercise?.state !== 'draft')
        refuseDistanceAlone(all.filter(({ id }) => id !== criterionId).map(({ versions }) => versions[0]!));
      await data.criteria.setRetired(criterionId, context.now);
      return { exerciseId: found.exerciseId };
    });
  },
});
