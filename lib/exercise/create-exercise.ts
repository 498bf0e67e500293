import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { createExerciseInput, exerciseSettingsSchema } from '@/shared/schemas/exercise';

/** Begins an exercise as a draft that only staff see. */
export const createExercise = operation({
  name: 'create-exercise',
  allow: 'exercise:plan',
  input: createExerciseInput,
  run: async ({ data, now }, { courseId, title, brief, safetySigns }) => {
    const settings = exerciseSettingsSchema.parse({ safetySigns });
    const exerciseId = await data.exercises.create({ courseId, title, brief, settings }, now);
    if (exerciseId === null) throw notFound();
    return { exerciseId };
  },
});
