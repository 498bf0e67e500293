import * as z from 'zod';
import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { courseId } from './ids';
import { byName } from './order';

/** What stands over every page of a course: its title, its zone, and what the reader is in it. */
export const readCourse = operation({
  name: 'read-course',
  allow: 'course:see',
  input: z.object({ courseId }),
  run: async ({ data }, input) => {
    const course = await data.courses.byId(input.courseId);
    const member = course?.members[0];
    if (!course || !member) throw notFound();
    return {
      id: course.id,
      title: course.title,
      timeZone: course.timeZone,
      archived: course.state === 'archived',
      retainUntil: course.retainUntil,
      version: course.version,
      role: member.role,
      memberId: member.id,
      sections: course.sections.sort(byName).map(({ id, name }) => ({ id, name })),
    };
  },
});
