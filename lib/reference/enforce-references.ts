import { operation } from '@/lib/access/operation';
import { findExercise } from '@/lib/exercise/find-exercise';
import { exerciseOnly } from '@/shared/schemas/exercise';
import { newReferenceSet } from './new-reference-set';

/** Puts the references as they stand in force: a new numbered set, and every proof of the exercise compared again with it. */
export const enforceReferences = operation({
  name: 'enforce-references',
  allow: 'reference:set',
  input: exerciseOnly,
  run: async (context, { exerciseId }) => {
    await findExercise(context, exerciseId);
    return newReferenceSet(context, exerciseId);
  },
});
