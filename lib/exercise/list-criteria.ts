import { operation } from '@/lib/access/operation';
import { exerciseOnly } from '@/shared/schemas/exercise';
import { findExercise } from './find-exercise';
import { criterionView } from '../rows/exercise';

/** What an exercise is judged by, as everybody in the course may read it. */
export const listCriteria = operation({
  name: 'list-criteria',
  allow: 'exercise:see',
  input: exerciseOnly,
  run: async (context, { exerciseId }) => {
    await findExercise(context, exerciseId);
    const criteria = (await context.data.criteria.ofExercise(exerciseId)).map(criterionView);
    const whole = criteria.reduce((sum, { weight }) => sum + weight, 0);
    return criteria.map(({ id, title, description, weight, levels }) => ({
      id,
      title,
      description,
      levels,
      share: (weight * 100) / whole,
    }));
  },
});
