import * as z from 'zod/mini';
import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { idSchema } from '@/shared/schemas/id';

/** Drafts of a course that were removed and can be taken back. */
export const listPutAside = operation({
  name: 'list-put-aside',
  allow: 'exercise:plan',
  input: z.strictObject({ courseId: idSchema }),
  run: async ({ data }, { courseId }) => {
    if (!(await data.exercises.myMember(courseId))) throw notFound();
    return data.exercises.putAside(courseId);
  },
});
