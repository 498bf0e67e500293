import * as z from 'zod/mini';
import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { idSchema } from '@/shared/schemas/id';
import { termOf } from './term-of';

/** A student’s own term: what they sent, and of each round what was released. */
export const showOwnTerm = operation({
  name: 'show-own-term',
  allow: 'release:see',
  input: z.strictObject({ courseId: idSchema }),
  run: async ({ data }, { courseId }) => {
    const member = await data.terms.own(courseId);
    if (!member) throw notFound();
    return termOf(data, member, 'student');
  },
});
