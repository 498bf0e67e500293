import * as z from 'zod';
import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { courseId } from './ids';

/** The links that still let people in, the next to run out first. The links themselves can't be shown again. */
export const listJoinLinks = operation({
  name: 'list-join-links',
  allow: 'member:manage',
  input: z.object({ courseId }),
  run: async ({ data, now }, input) => {
    if (!(await data.courses.byId(input.courseId))) throw notFound();
    const links = await data.joinLinks.ofCourse(input.courseId, now);
    return links
      .sort((a, b) => a.expiresAt.getTime() - b.expiresAt.getTime())
      .map(({ id, role, section, createdAt, createdBy, expiresAt }) => ({
        id,
        role,
        section: section?.name ?? null,
        createdAt,
        madeBy: createdBy?.name || null,
        expiresAt,
      }));
  },
});
