import * as z from 'zod';
import { operation } from '@/lib/access/operation';

/** The person's own courses: the present ones first, newest first. */
export const listCourses = operation({
  name: 'list-courses',
  allow: 'course:see',
  input: z.object({}),
  run: async ({ data }) => {
    const courses = await data.courses.own();
    const mayMakeCourses = await data.account.mayMakeCourses();
    return {
      mayMakeCourses,
      courses: courses
        .sort(
          (a, b) =>
            Number(a.state === 'archived') - Number(b.state === 'archived') ||
            b.createdAt.getTime() - a.createdAt.getTime(),
        )
        .flatMap(({ id, title, timeZone, state, members: [member] }) =>
          member
            ? [
                {
                  id,
                  title,
                  timeZone,
                  archived: state === 'archived',
                  role: member.role,
                  section: member.section?.name ?? null,
                },
              ]
            : [],
        ),
    };
  },
});
