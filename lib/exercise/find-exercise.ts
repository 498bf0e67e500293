import { notFound } from '@/lib/access/errors';
import type { Context } from '@/lib/access/operation';

/** The exercise row, or the one answer for what is absent or somebody else's. */
export async function findExercise({ data }: Context, id: string, options: { removed?: boolean } = {}) {
  const exercise = await data.exercises.find(id, options);
  if (!exercise) throw notFound();
  return exercise;
}
