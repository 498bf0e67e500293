import * as z from 'zod';
import { AppError, notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { makePasswordLink } from '@/lib/account/make-password-link';
import { mailIsSetUp } from '@/lib/mail/send';
import { courseId, memberId } from './ids';
import { recordOnPerson } from './record-on-person';

/**
 * A link for a new password that an instructor hands to a student or assistant in person, where no mail is set up.
 * Whoever holds it can sign in as that person: so it is never made for people who teach, nor for anybody who is or was in
 * a course that this instructor does not run, and it is written down in all courses of the person.
 */
export const handOverPasswordLink = operation({
  name: 'hand-over-password-link',
  allow: 'member:manage',
  input: z.object({ courseId, memberId }),
  run: async ({ data, actor, now }, input) => {
    const member = await data.members.byId(input.courseId, input.memberId);
    if (actor.kind !== 'person' || !member?.user || member.removedAt) throw notFound();
    const { id, name, mayCreateCourses } = member.user;
    if (mailIsSetUp()) throw byMail();
    if (mayCreateCourses || (await data.members.teachesSomewhere(id))) throw teaches(name);
    if (await data.members.isElsewhere(id)) throw elsewhere(name);
    const { path, expiresAt } = await makePasswordLink(data, { userId: id, createdById: actor.userId, hours: 24 }, now);
    await recordOnPerson(data, id, { verb: 'password link handed over' }, now);
    return { path, name, expiresAt };
  },
});

const byMail = () =>
  new AppError(
    'CONFLICT',
    'Mail is set up here, so this link is not handed over: “Forgotten your password?” on the sign-in page sends it to the person.',
  );
const elsewhere = (name: string) =>
  new AppError(
    'CONFLICT',
    `${name} is or was in a course that you do not run, so you can't make this link. The person who runs the server can create one at its console.`,
  );
const teaches = (name: string) =>
  new AppError(
    'CONFLICT',
    `${name} teaches, so you can’t create this link. The person who runs the server can create one at its console.`,
  );
