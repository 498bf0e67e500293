import { operation } from '@/lib/access/operation';
import { retryOnConflict } from '@/lib/data/retry';
import { addRoundInput } from '@/shared/schemas/exercise';
import { findExercise } from './find-exercise';
import { typedRound } from './typed-round';

/** Puts another round at the end. Result: what had to be decided where the clocks change. */
export const addRound = operation({
  name: 'add-round',
  allow: 'exercise:plan',
  input: addRoundInput,
  run: async (context, { exerciseId, ...typed }) => {
    const exercise = await findExercise(context, exerciseId);
    const { fields, remarks } = typedRound(typed, exercise.course.timeZone);
    const roundId = await retryOnConflict(() => context.data.rounds.add(exerciseId, fields));
    return { exerciseId, roundId, remarks };
  },
});
