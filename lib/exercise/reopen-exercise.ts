import { AppError, changedMeanwhile } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { exerciseAtVersion } from '@/shared/schemas/exercise';
import { findExercise } from './find-exercise';

/** Opens a closed exercise again; each round's own dates decide what can still be sent. */
export const reopenExercise = operation({
  name: 'reopen-exercise',
  allow: 'exercise:plan',
  input: exerciseAtVersion,
  run: async (context, { exerciseId, version }) => {
    const { data, now } = context;
    const row = await findExercise(context, exerciseId);
    if (row.state !== 'closed') throw new AppError('CONFLICT', 'Only a closed exercise can be opened again.');
    if (!(await data.exercises.change(exerciseId, version, { state: 'published', closedAt: null })))
      throw changedMeanwhile('this exercise');
    await data.audit.record(
      { courseId: row.courseId, verb: 'exercise opened again', subject: `exercise:${exerciseId}` },
      now,
    );
    return { exerciseId };
  },
});
