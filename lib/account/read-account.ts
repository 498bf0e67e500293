import * as z from 'zod';
import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';

/** The person's own account: name, address, how they sign in, where they are signed in, which courses they are in. */
export const readAccount = operation({
  name: 'read-account',
  allow: 'account:own',
  input: z.object({}),
  run: async ({ data, actor, now }) => {
    const account = await data.account.own();
    if (!account) throw notFound();
    const sessions = await data.sessions.own(now);
    const here = actor.kind === 'person' ? actor.sessionId : null;
    return {
      name: account.name,
      email: account.emailNorm,
      hasPassword: account.passwordHash !== null,
      mayMakeCourses: account.mayCreateCourses,
      signsInThrough: account.identities.map(({ issuer }) => issuer),
      courses: account.members.map(({ role, course }) => ({ id: course.id, title: course.title, role })),
      sessions: sessions.map(({ id, createdAt, lastSeenAt }) => ({ id, createdAt, lastSeenAt, thisOne: id === here })),
    };
  },
});
