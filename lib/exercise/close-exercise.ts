import { AppError, changedMeanwhile } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { exerciseAtVersion } from '@/shared/schemas/exercise';
import { findExercise } from './find-exercise';

/** Ends an exercise: students see it and what was released, and can send nothing more. It can be opened again. */
export const closeExercise = operation({
  name: 'close-exercise',
  allow: 'exercise:plan',
  input: exerciseAtVersion,
  run: async (context, { exerciseId, version }) => {
    const { data, now } = context;
    const row = await findExercise(context, exerciseId);
    if (row.state !== 'published')
      throw new AppError('CONFLICT', 'Only an exercise that is published and open can be closed.');
    if (!(await data.exercises.change(exerciseId, version, { state: 'closed', closedAt: now })))
      throw changedMeanwhile('this exercise');
    await data.audit.record(
      { courseId: row.courseId, verb: 'exercise closed', subject: `exercise:${exerciseId}` },
      now,
    );
    return { exerciseId };
  },
});
