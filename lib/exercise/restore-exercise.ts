import { operation } from '@/lib/access/operation';
import { exerciseAtVersion } from '@/shared/schemas/exercise';
import { changedMeanwhile } from '../access/errors';
import { findExercise } from './find-exercise';

/** Takes a draft back that was put aside. */
export const restoreExercise = operation({
  name: 'restore-exercise',
  allow: 'exercise:plan',
  input: exerciseAtVersion,
  run: async (context, { exerciseId, version }) => {
    const { data, now } = context;
    const row = await findExercise(context, exerciseId, { removed: true });
    if (!(await data.exercises.change(exerciseId, version, { removedAt: null })))
      throw changedMeanwhile('this exercise');
    await data.audit.record(
      { courseId: row.courseId, verb: 'exercise restored', subject: `exercise:${exerciseId}` },
      now,
    );
    return { exerciseId };
  },
});
