import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import * as z from 'zod/mini';
import { idSchema } from '@/shared/schemas/id';
import { exerciseView, roundView } from '../rows/exercise';

/** The exercises of a course in their order: drafts, too, for staff. */
export const listExercises = operation({
  name: 'list-exercises',
  allow: 'exercise:see',
  input: z.strictObject({ courseId: idSchema }),
  run: async ({ data }, { courseId }) => {
    if (!(await data.exercises.myMember(courseId))) throw notFound();
    const rows = await data.exercises.ofCourse(courseId);
    return rows.map((row) => ({
      ...exerciseView(row),
      rounds: row.rounds.map(roundView),
      specimens: row._count.specimens,
    }));
  },
});
