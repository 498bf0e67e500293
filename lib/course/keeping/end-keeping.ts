import * as z from 'zod/mini';
import { AppError, notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { retryOnConflict } from '@/lib/data/retry';
import { courseId } from '../ids';
import { daysLeft } from './days-left';

/**
 * Ends the keeping of a course's work once its day is past: all students become pseudonyms, and what they wrote and what
 * was written about their proofs goes; spacings and marks stay. Asked for by writing the course's title. Never done by itself.
 */
export const endKeeping = operation({
  name: 'end-keeping',
  allow: 'course:run',
  input: z.object({ courseId, title: z.string().check(z.maxLength(1000)) }),
  run: async ({ data, now }, { courseId: id, title }) => {
    const course = await data.courses.byId(id);
    if (!course) throw notFound();
    if (course.retainUntil === null)
      throw new AppError(
        'CONFLICT',
        'Nothing was changed: the course has no day until which its work is kept. Set it in the settings first, by your school’s rule.',
      );
    if (daysLeft(course.retainUntil, course.timeZone, now) >= 0)
      throw new AppError(
        'CONFLICT',
        `Nothing was changed: the work is kept until ${course.retainUntil}, and that day is not past yet.`,
      );
    if (title.normalize('NFC').trim() !== course.title)
      throw new AppError('INVALID', 'Nothing was changed.', {
        fields: {
          title: `This is not the title of the course, which is “${course.title}” (given: “${title.slice(0, 60)}”).`,
        },
      });
    const students = await retryOnConflict(() =>
      data.transaction(async (inside) => {
        const count = await inside.erase.studentsOf(id, now);
        await inside.audit.record(
          {
            courseId: id,
            verb: 'keeping ended',
            subject: `course:${id}`,
            details: { students: count, keptUntil: course.retainUntil },
          },
          now,
        );
        return count;
      }),
    );
    return { students };
  },
});
