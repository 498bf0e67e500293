import * as z from 'zod/mini';
import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { courseId } from '../ids';
import { daysLeft, noticeDue } from './days-left';

/** Until when the work of a course is kept, whether that is near or past, and how many students it still names. */
export const readKeeping = operation({
  name: 'read-keeping',
  allow: 'course:run',
  input: z.object({ courseId }),
  run: async ({ data, now }, input) => {
    const course = await data.courses.byId(input.courseId);
    if (!course) throw notFound();
    const { id, title, timeZone, retainUntil } = course;
    const left = retainUntil === null ? null : daysLeft(retainUntil, timeZone, now);
    return {
      course: { id, title, timeZone, role: 'instructor' as const },
      retainUntil,
      daysLeft: left,
      near: left !== null && (left < 0 || noticeDue(left) !== null),
      students: await data.keeping.countStudents(id),
    };
  },
});
