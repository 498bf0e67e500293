import * as z from 'zod';
import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { courseTitleSchema, timeZoneSchema } from '@/shared/schemas/course';
import { checkedTimeZone } from './time-zones';

/** Opens a course; whoever opens it teaches it. */
export const createCourse = operation({
  name: 'create-course',
  allow: 'course:make',
  input: z.object({ title: courseTitleSchema, timeZone: timeZoneSchema }),
  run: ({ data, actor, now }, { title, timeZone }) => {
    if (actor.kind !== 'person') throw notFound();
    const { userId } = actor;
    const settled = { title, timeZone: checkedTimeZone(timeZone), retainUntil: null };
    return data.transaction(async (inside) => {
      const course = await inside.courses.make(settled, now);
      await inside.members.add({ courseId: course.id, userId, role: 'instructor', sectionId: null }, now);
      await inside.audit.record({ courseId: course.id, verb: 'course made', subject: `course:${course.id}` }, now);
      return { courseId: course.id };
    });
  },
});
