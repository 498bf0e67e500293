import { changedMeanwhile, notFound } from '@/lib/access/errors';
import type { Context } from '@/lib/access/operation';

type Patch = { title?: string; shownAt?: Date | null; removedAt?: Date | null };

/** Changes what is said or decided of a demonstration; never its steps. Only its author and instructors of the course. */
export async function changeDemonstration({ data }: Context, demonstrationId: string, version: number, patch: Patch) {
  const row = await data.demonstrations.find(demonstrationId);
  if (!row || !(await data.demonstrations.mayKeep(demonstrationId))) throw notFound();
  if (!(await data.demonstrations.change(demonstrationId, version, patch))) throw changedMeanwhile('the demonstration');
  return {
    demonstrationId,
    exerciseId: row.specimenVersion.specimen.exerciseId,
    courseId: row.specimenVersion.specimen.exercise.courseId,
  };
}
