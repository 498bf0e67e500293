import * as z from 'zod';
import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { courseId } from './ids';
import { byName } from './order';
import { memberView } from './member-view';

/** Everybody in the course, those who were removed apart. */
export const listPeople = operation({
  name: 'list-people',
  allow: 'member:see',
  input: z.object({ courseId }),
  run: async ({ data }, input) => {
    const course = await data.courses.byId(input.courseId);
    const me = course?.members[0];
    if (!course || !me) throw notFound();
    const people = (await data.members.ofCourse(course.id)).map((member) => memberView(member, me.role, course.sections)).sort(byName);
    return {
      course: { id: course.id, title: course.title, timeZone: course.timeZone, role: me.role, memberId: me.id },
      sections: course.sections.sort(byName).map(({ id, name }) => ({ id, name, people: people.filter((person) => person.sectionId === id && !person.removedAt).length })),
      people: people.filter(({ removedAt }) => removedAt === null),
      removed: people.filter(({ removedAt }) => removedAt !== null),
    };
  },
});
