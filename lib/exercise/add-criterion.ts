import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { addCriterionInput } from '@/shared/schemas/criterion';
import { refuseDistanceAlone } from './distance-alone';
import { withExerciseHeld } from './with-exercise-held';

/** Adds what is judged, with its levels. */
export const addCriterion = operation({
  name: 'add-criterion',
  allow: 'exercise:plan',
  input: addCriterionInput,
  run: (context, { exerciseId, ...typed }) =>
    withExerciseHeld(context, exerciseId, async (data) => {
      const exercise = await data.exercises.find(exerciseId);
      const others = await data.criteria.ofExercise(exerciseId);
      if (exercise?.state !== 'draft') refuseDistanceAlone([...others.map(({ versions }) => versions[0]!), typed]);
      if (!(await data.criteria.add(exerciseId, typed, context.now))) throw notFound();
      return { exerciseId };
    }),
});
