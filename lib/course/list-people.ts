import * as z from 'zod';
import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { findSchema, pageNumberSchema, pageOf } from '@/shared/schemas/page';
import { courseId } from './ids';
import { byName } from './order';
import { memberView } from './member-view';

/** Students on one page, and at most so many of those who were removed. */
export const peoplePerPage = 50;

/** People of the course: those who teach it, a page of its students (of those whose name holds `find`), and who was removed last. */
export const listPeople = operation({
  name: 'list-people',
  allow: 'member:see',
  input: z.object({ courseId, page: pageNumberSchema, find: findSchema }),
  run: async ({ data }, { page: asked, find, ...input }) => {
    const course = await data.courses.byId(input.courseId);
    const me = course?.members[0];
    if (!course || !me) throw notFound();
    const { all, found } = await data.members.countStudents(course.id, find);
    const { page, pages, from } = pageOf(asked, found, peoplePerPage);
    const [staff, students, removed, removedCount] = await Promise.all([
      data.members.staffOf(course.id),
      data.members.studentsOf(course.id, { find, skip: from, take: peoplePerPage }),
      data.members.removedFrom(course.id, peoplePerPage),
      data.members.countRemoved(course.id),
    ]);
    const view = (member: (typeof students)[number]) => memberView(member, me.role, course.sections);
    return {
      course: { id: course.id, title: course.title, timeZone: course.timeZone, role: me.role, memberId: me.id },
      sections: course.sections.sort(byName).map(({ id, name }) => ({ id, name })),
      staff: staff.map(view).sort(byName),
      students: students.map(view),
      studentCount: all,
      found,
      find,
      page,
      pages,
      removed: removed.map(view),
      removedCount,
    };
  },
});
