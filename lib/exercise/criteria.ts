import { AppError, changedMeanwhile, notFound } from '@/lib/access/errors';
import { type Context, operation } from '@/lib/access/operation';
import type { ScopedData } from '@/lib/data';
import { addCriterionInput, changeCriterionInput, criterionOnly } from '@/shared/schemas/criterion';
import { exerciseOnly } from '@/shared/schemas/exercise';
import { criterionView } from '@/lib/rows/exercise';
import { findExercise } from './exercises';

/** The criteria of an exercise, readable by every member of the course. */
export const listCriteria = operation({
  name: 'list-criteria',
  allow: 'exercise:see',
  input: exerciseOnly,
  run: async (context, { exerciseId }) => {
    await findExercise(context, exerciseId);
    const criteria = (await context.data.criteria.ofExercise(exerciseId)).map(criterionView);
    const whole = criteria.reduce((sum, { weight }) => sum + weight, 0);
    return criteria.map(({ id, title, description, weight, levels }) => ({
      id,
      title,
      description,
      levels,
      share: (weight * 100) / whole,
    }));
  },
});

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

/** Makes a new version of a criterion; marks that were given keep the one they were given by. */
export const changeCriterion = operation({
  name: 'change-criterion',
  allow: 'exercise:plan',
  input: changeCriterionInput,
  run: async (context, { criterionId, number, ...typed }) => {
    const found = await context.data.criteria.find(criterionId);
    if (!found) throw notFound();
    return withExerciseHeld(context, found.exerciseId, async (data) => {
      const criterion = await data.criteria.find(criterionId);
      if (criterion?.versions[0]?.number !== number) throw changedMeanwhile('this criterion');
      const all = await data.criteria.ofExercise(found.exerciseId);
      if (criterion.exercise.state !== 'draft')
        refuseDistanceAlone(all.map(({ id, versions }) => (id === criterionId ? typed : versions[0]!)));
      await data.criteria.addVersion(criterionId, number + 1, typed, context.now);
      return { exerciseId: found.exerciseId };
    });
  },
});

/** Takes a criterion out of use; marks given by it stay, and it can be put back. */
export const retireCriterion = operation({
  name: 'retire-criterion',
  allow: 'exercise:plan',
  input: criterionOnly,
  run: async (context, { criterionId }) => {
    const found = await context.data.criteria.find(criterionId);
    if (!found) throw notFound();
    return withExerciseHeld(context, found.exerciseId, async (data) => {
      const exercise = await data.exercises.find(found.exerciseId);
      const all = await data.criteria.ofExercise(found.exerciseId);
      if (exercise?.state !== 'draft')
        refuseDistanceAlone(all.filter(({ id }) => id !== criterionId).map(({ versions }) => versions[0]!));
      await data.criteria.setRetired(criterionId, context.now);
      return { exerciseId: found.exerciseId };
    });
  },
});

/** Puts a criterion back that was taken out of use. */
export const restoreCriterion = operation({
  name: 'restore-criterion',
  allow: 'exercise:plan',
  input: criterionOnly,
  run: async ({ data }, { criterionId }) => {
    const criterion = await data.criteria.find(criterionId);
    if (!criterion || !(await data.criteria.setRetired(criterionId, null))) throw notFound();
    return { exerciseId: criterion.exerciseId };
  },
});

/** Distance from the instructor is evidence; by itself it would mark taste. */
function refuseDistanceAlone(criteria: readonly { basis: string }[]): void {
  if (!isDistanceAlone(criteria)) return;
  const message =
    'Distance from the references can’t be the only criterion: two spacings can both be right. Add a criterion that a person judges by eye.';
  throw new AppError('INVALID', message, { fields: { basis: message } });
}

export const isDistanceAlone = (criteria: readonly { basis: string }[]): boolean =>
  criteria.length > 0 && criteria.every(({ basis }) => basis === 'distance');

/**
 * Runs `body` while no other request can be in the same place of the same exercise: what it reads there stays true
 * until it has written. For rules about several rows, such as that distance is never the only criterion.
 */
export const withExerciseHeld = <Result>(
  { data }: Context,
  exerciseId: string,
  body: (data: ScopedData) => Promise<Result>,
): Promise<Result> =>
  data.transaction(async (inside) => {
    if (!(await inside.exercises.hold(exerciseId))) throw notFound();
    return body(inside);
  });
