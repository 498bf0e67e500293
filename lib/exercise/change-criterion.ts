import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { isTaken } from '@/lib/data/retry';
import { changeCriterionInput } from '@/shared/schemas/criterion';
import { changedMeanwhile } from './changed-meanwhile';
import { refuseDistanceAlone } from './distance-alone';

/** Makes a new version of a criterion; marks that were given keep the one they were given by. */
export const changeCriterion = operation({
  name: 'change-criterion',
  allow: 'exercise:plan',
  input: changeCriterionInput,
  run: async ({ data, now }, { criterionId, number, ...typed }) => {
    const criterion = await data.criteria.find(criterionId);
    if (!criterion) throw notFound();
    if (criterion.versions[0]!.number !== number) throw changedMeanwhile('this criterion');
    if (criterion.exercise.state !== 'draft') {
      const all = await data.criteria.ofExercise(criterion.exerciseId);
      refuseDistanceAlone(all.map(({ id, versions }) => (id === criterionId ? typed : versions[0]!)));
    }
    try {
      await data.criteria.addVersion(criterionId, number + 1, typed, now);
    } catch (error) {
      if (isTaken(error)) throw changedMeanwhile('this criterion');
      throw error;
    }
    return { exerciseId: criterion.exerciseId };
  },
});
