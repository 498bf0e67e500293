import * as z from 'zod';
import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { mailIsSetUp } from '@/lib/mail/send';
import { courseId, memberId } from './ids';
import { memberView } from './member-view';
import { byName } from './order';

/** One person, for the page on which an instructor changes what they are in the course. */
export const readMember = operation({
  name: 'read-member',
  allow: 'member:manage',
  input: z.object({ courseId, memberId }),
  run: async ({ data, actor }, input) => {
    const course = await data.courses.byId(input.courseId);
    const member = await data.members.byId(input.courseId, input.memberId);
    if (!course || !member?.user) throw notFound();
    const self = actor.kind === 'person' && actor.userId === member.user.id;
    return {
      course: { id: course.id, title: course.title, timeZone: course.timeZone, role: 'instructor' as const },
      sections: course.sections.sort(byName).map(({ id, name }) => ({ id, name })),
      person: memberView(member, 'instructor', course.sections),
      self,
      iMayLetMakeCourses: await data.account.mayMakeCourses(),
      passwordLink: await passwordLinkFor(member.user),
    };

    async function passwordLinkFor(user: { id: string; mayCreateCourses: boolean }) {
      if (self) return 'yourself' as const;
      if (mailIsSetUp()) return 'by mail' as const;
      if (user.mayCreateCourses || (await data.members.teachesSomewhere(user.id))) return 'teaches' as const;
      return (await data.members.isElsewhere(user.id)) ? ('elsewhere' as const) : ('can be made' as const);
    }
  },
});
