import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { addCriterionInput } from '@/shared/schemas/criterion';
import { refuseDistanceAlone } from './distance-alone';
import { findExercise } from './find-exercise';

/** Adds what is judged, with its levels. */
export const addCriterion = operation({
  name: 'add-criterion',
  allow: 'exercise:plan',
  input: addCriterionInput,
  run: async (context, { exerciseId, ...typed }) => {
    const exercise = await findExercise(context, exerciseId);
    const others = await context.data.criteria.ofExercise(exerciseId);
    if (exercise.state !== 'draft') refuseDistanceAlone([...others.flatMap(({ versions }) => versions.slice(0, 1)), typed]);
    if (!(await context.data.criteria.add(exerciseId, typed, context.now))) throw notFound();
    return { exerciseId };
  },
});
