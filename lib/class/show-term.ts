import * as z from 'zod/mini';
import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { idSchema } from '@/shared/schemas/id';
import { termOf } from './term-of';

/** One student’s term for those who teach, to talk over: marks as they were released, and nothing of a round in which names are hidden. */
export const showTerm = operation({
  name: 'show-term',
  allow: 'class:see',
  input: z.strictObject({ courseId: idSchema, memberId: idSchema }),
  run: async ({ data }, { courseId, memberId }) => {
    const member = await data.terms.ofStudent(courseId, memberId);
    if (!member) throw notFound();
    return termOf(data, member, 'staff');
  },
});
