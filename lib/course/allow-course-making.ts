import * as z from 'zod';
import { AppError, notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { courseId, memberId } from './ids';
import { recordOnPerson } from './record-on-person';

/** Lets another instructor of one's course open courses too, or no longer. Only who may do so can pass it on. */
export const allowCourseMaking = operation({
  name: 'allow-course-making',
  allow: 'member:manage',
  input: z.object({ courseId, memberId, allowed: z.boolean() }),
  run: async ({ data, actor, now }, { allowed, ...which }) => {
    const member = await data.members.byId(which.courseId, which.memberId);
    if (actor.kind !== 'person' || !member?.user || member.removedAt) throw notFound();
    if (!(await data.account.mayMakeCourses())) throw notFound();
    if (member.user.id === actor.userId)
      throw new AppError(
        'CONFLICT',
        'You can’t change this for yourself, so that there is always a person who can open courses.',
      );
    if (allowed && member.role !== 'instructor')
      throw new AppError('CONFLICT', `${member.user.name} is not an instructor of this course. Change the role first.`);
    const { id } = member.user;
    await data.transaction(async (inside) => {
      if ((await inside.members.setCourseMaking(which.courseId, which.memberId, allowed)).count !== 1) throw notFound();
      await recordOnPerson(inside, id, { verb: allowed ? 'course making allowed' : 'course making withdrawn' }, now);
    });
    return {};
  },
});
