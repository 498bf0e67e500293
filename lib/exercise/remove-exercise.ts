import { AppError, changedMeanwhile } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { exerciseAtVersion } from '@/shared/schemas/exercise';
import { findExercise } from './find-exercise';

/** Puts a draft aside; it can be taken back. A published exercise is closed and never removed: it holds people's work. */
export const removeExercise = operation({
  name: 'remove-exercise',
  allow: 'exercise:plan',
  input: exerciseAtVersion,
  run: async (context, { exerciseId, version }) => {
    const { data, now } = context;
    const row = await findExercise(context, exerciseId);
    if (row.state !== 'draft')
      throw new AppError(
        'CONFLICT',
        'A published exercise holds students’ work and can’t be removed. Close it instead.',
      );
    if (!(await data.exercises.change(exerciseId, version, { removedAt: now })))
      throw changedMeanwhile('this exercise');
    await data.audit.record(
      { courseId: row.courseId, verb: 'exercise put aside', subject: `exercise:${exerciseId}` },
      now,
    );
    return { exerciseId };
  },
});
