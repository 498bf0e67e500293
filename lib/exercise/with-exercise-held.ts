import { notFound } from '@/lib/access/errors';
import type { Context } from '@/lib/access/operation';
import type { ScopedData } from '@/lib/data';

/**
 * Runs `body` while nobody else can be in the same place of the same exercise: what it reads there stays true until it
 * has written. For rules about several rows, such as that distance is never the only criterion.
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
