import { operation } from '@/lib/access/operation';
import { exerciseOnly } from '@/shared/schemas/exercise';
import { faceChoices } from './face-choices';
import { findExercise } from './find-exercise';

/** The faces that an exercise's specimens can be set in. */
export const listFacesFor = operation({
  name: 'list-faces-for-exercise',
  allow: 'exercise:plan',
  input: exerciseOnly,
  run: async (context, { exerciseId }) => {
    const exercise = await findExercise(context, exerciseId);
    return { exercise: { id: exercise.id, title: exercise.title, state: exercise.state }, faces: faceChoices() };
  },
});
