import * as z from 'zod/mini';
import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { idSchema } from '@/shared/schemas/id';

/** All rounds of a course at a glance: how many of the class have sent, and how many have had a release. */
export const showCourseClass = operation({
  name: 'show-course-class',
  allow: 'class:see',
  input: z.strictObject({ courseId: idSchema }),
  run: async ({ data }, { courseId }) => {
    const course = await data.classSummary.course(courseId);
    if (!course) throw notFound();
    const [rounds, students] = await Promise.all([
      data.classSummary.roundsOfCourse(courseId),
      data.members.countStudents(courseId, '').then(({ all }) => all),
    ]);
    const tallies = await data.roundState.tallies(rounds.map(({ id }) => id));
    return {
      course,
      students,
      rounds: rounds.map(({ id, number, title, state, dueAt, exercise }) => ({
        number,
        title,
        state,
        dueAt: dueAt?.toISOString() ?? null,
        exercise,
        ...(tallies.get(id) ?? { sent: 0, released: 0 }),
      })),
    };
  },
});
