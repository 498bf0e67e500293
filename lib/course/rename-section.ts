import * as z from 'zod';
import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { isTaken } from '@/lib/data/retry';
import { sectionNameSchema } from '@/shared/schemas/course';
import { courseId, sectionId } from './ids';
import { sectionNameTaken } from './section-name-taken';

export const renameSection = operation({
  name: 'rename-section',
  allow: 'course:run',
  input: z.object({ courseId, sectionId, name: sectionNameSchema }),
  run: async ({ data }, { courseId: course, sectionId: section, name }) => {
    try {
      if ((await data.sections.rename(course, section, name)).count !== 1) throw notFound();
      return {};
    } catch (error) {
      throw isTaken(error) ? sectionNameTaken(name) : error;
    }
  },
});
