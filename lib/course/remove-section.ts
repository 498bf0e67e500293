import * as z from 'zod';
import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { courseId, sectionId } from './ids';

/** Takes a section away. Its people stay in the course, in no section. */
export const removeSection = operation({
  name: 'remove-section',
  allow: 'course:run',
  input: z.object({ courseId, sectionId }),
  run: async ({ data }, { courseId: course, sectionId: section }) => {
    if ((await data.sections.remove(course, section)).count !== 1) throw notFound();
    return {};
  },
});
