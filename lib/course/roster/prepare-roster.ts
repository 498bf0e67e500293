import * as z from 'zod/mini';
import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { mailIsSetUp } from '@/lib/mail/send';
import { courseId } from '../ids';

/** What stands over the page for a roster: the course, and how new people will get their links. */
export const prepareRoster = operation({
  name: 'prepare-roster',
  allow: 'member:manage',
  input: z.object({ courseId }),
  run: async ({ data }, input) => {
    const course = await data.courses.byId(input.courseId);
    if (!course) throw notFound();
    return {
      course: { id: course.id, title: course.title, timeZone: course.timeZone, role: 'instructor' as const },
      byMail: mailIsSetUp(),
    };
  },
});
