import * as z from 'zod/mini';
import { AppError, notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { copyDatesSchema, courseTitleSchema } from '@/shared/schemas/course';
import { courseId } from '../ids';
import { movedDates } from './moved-dates';

/**
 * Takes a course on to the next term as a new one, without its people and what they made: exercises as drafts, with
 * their rounds, criteria and lines as they stand now, shared stock notes, faces with what was said of their licences. Of
 * references and demonstrations only those that the person who copies made: others made theirs for the old course.
 */
export const copyCourse = operation({
  name: 'copy-course',
  allow: 'course:run',
  input: z.object({ courseId, title: courseTitleSchema, ...copyDatesSchema }),
  run: async ({ data, actor, now }, { courseId: id, title, dates, days }) => {
    if (actor.kind !== 'person') throw notFound();
    const from = await data.courseCopy.read(id);
    if (!from) throw notFound();
    if (!(await data.account.mayMakeCourses()))
      throw new AppError(
        'CONFLICT',
        'A copy is a new course, and you may not open courses here. Ask somebody who may, or whoever runs the server.',
      );
    return data.transaction(async (inside) => {
      const course = await inside.courses.make({ title, timeZone: from.timeZone, retainUntil: null }, now);
      const member = await inside.members.add(
        { courseId: course.id, userId: actor.userId, role: 'instructor', sectionId: null },
        now,
      );
      const into = { courseId: course.id, memberId: member.id, userId: actor.userId };
      await inside.courseCopy.settings(course.id, from.settings);
      for (const exercise of from.exercises) {
        const moved = new Map(
          exercise.rounds.map((round) => {
            const { remarks: _, ...when } = movedDates(round, dates === 'moved' ? days : null, from.timeZone);
            return [round.id, when];
          }),
        );
        await inside.courseCopy.exercise(exercise, moved, into, now);
      }
      await inside.courseCopy.rest(from, into, now);
      await inside.audit.record(
        { courseId: course.id, verb: 'course made', subject: `course:${course.id}`, details: { copiedFrom: id } },
        now,
      );
      await inside.audit.record({ courseId: id, verb: 'course copied', subject: `course:${course.id}` }, now);
      return { courseId: course.id };
    });
  },
});
