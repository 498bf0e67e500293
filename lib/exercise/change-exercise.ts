import { operation } from '@/lib/access/operation';
import { changeExerciseInput } from '@/shared/schemas/exercise';
import { changedMeanwhile } from '../access/errors';
import { findExercise } from './find-exercise';

/** Title, brief and settings; they may change at any time. */
export const changeExercise = operation({
  name: 'change-exercise',
  allow: 'exercise:plan',
  input: changeExerciseInput,
  run: async (context, { exerciseId, version, title, brief, settings }) => {
    await findExercise(context, exerciseId);
    const changed = await context.data.exercises.change(exerciseId, version, { title, brief, settings });
    if (!changed) throw changedMeanwhile('this exercise');
    return { exerciseId, version: version + 1 };
  },
});
