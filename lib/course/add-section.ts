import * as z from 'zod';
import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { isTaken } from '@/lib/data/retry';
import { sectionNameSchema } from '@/shared/schemas/course';
import { courseId } from './ids';
import { sectionNameTaken } from './section-name-taken';

export const addSection = operation({
  name: 'add-section',
  allow: 'course:run',
  input: z.object({ courseId, name: sectionNameSchema }),
  run: async ({ data, now }, { courseId: course, name }) => {
    if (!(await data.courses.byId(course))) throw notFound();
    try {
      return { sectionId: (await data.sections.add(course, name, now)).id };
    } catch (error) {
      throw isTaken(error) ? sectionNameTaken(name) : error;
    }
  },
});
