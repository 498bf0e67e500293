import * as z from 'zod';
import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { courseId } from './ids';
import { byName } from './order';
import { timeZones } from './time-zones';

/** What an instructor may change about a course as a whole. */
export const readSettings = operation({
  name: 'read-settings',
  allow: 'course:run',
  input: z.object({ courseId }),
  run: async ({ data }, input) => {
    const course = await data.courses.byId(input.courseId);
    if (!course) throw notFound();
    const { id, title, timeZone, retainUntil, version, sections } = course;
    return {
      course: { id, title, timeZone, retainUntil, version, role: 'instructor' as const },
      sections: sections.sort(byName).map((section) => ({ id: section.id, name: section.name })),
      timeZones: timeZones(),
    };
  },
});
