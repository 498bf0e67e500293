import * as z from 'zod';
import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { courseId } from './ids';

const most = 200;

/** What was done to the course, its people, marks and releases: the newest two hundred acts. */
export const listActs = operation({
  name: 'list-acts',
  allow: 'records:read',
  input: z.object({ courseId }),
  run: async ({ data }, input) => {
    if (!(await data.courses.byId(input.courseId))) throw notFound();
    const people = new Map((await data.members.ofCourse(input.courseId)).map((member) => [`member:${member.id}`, member.user?.name ?? null]));
    const acts = await data.audit.ofCourse(input.courseId, most);
    return acts.map(({ id, verb, subject, at, actor }) => ({ id, verb, who: actor?.name || null, whom: people.get(subject) ?? null, at }));
  },
});
