import { changedMeanwhile, notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { changeCriterionInput } from '@/shared/schemas/criterion';
import { refuseDistanceAlone } from './distance-alone';
import { withExerciseHeld } from './with-exercise-held';

/** Makes a new version of a criterion; marks that were given keep the one they were given by. */
export const changeCriterion = operation({
  name: 'change-criterion',
  allow: 'exercise:plan',
  input: changeCriterionInput,
  run: async (context, { criterionId, number, ...typed }) => {
    const found = await context.data.criteria.find(criterionId);
    if (!found) throw notFound();
    return withExerciseHeld(context, found.exerciseId, async (data) => {
      const criterion = await data.criteria.find(criterionId);
      if (criterion?.versions[0]?.number !== number) throw changedMeanwhile('this criterion');
      const all = await data.criteria.ofExercise(found.exerciseId);
      if (criterion.exercise.state !== 'draft')
        refuseDistanceAlone(all.map(({ id, versions }) => (id === criterionId ? typed : versions[0]!)));
      await data.criteria.addVersion(criterionId, number + 1, typed, context.now);
      return { exerciseId: found.exerciseId };
    });
  },
});
