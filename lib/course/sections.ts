import * as z from 'zod';
import { AppError, notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { isTaken } from '@/lib/data/retry';
import { sectionNameSchema } from '@/shared/schemas/course';
import { courseId, sectionId } from './courses';

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

const sectionNameTaken = (name: string): AppError =>
  new AppError('INVALID', 'Nothing was changed.', {
    fields: { name: `There is a section “${name}” already. Choose another name.` },
  });
