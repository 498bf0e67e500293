import * as z from 'zod';
import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { systemCaller } from '@/lib/access/caller';
import { isTaken } from '@/lib/data/retry';
import { linkTokenSchema, newAccountSchema } from '@/shared/schemas/account';
import { hashPassword, refuseWeak } from './password';
import { openSession } from './sessions';
import { addressTaken, hashToken, linkIsOver, newToken } from './token';
import { addressOf, countTry } from './tries';

/** Makes the first instructor's account from the link that the console showed. The link works once. */
export const becomeFirstInstructor = operation({
  name: 'become-first-instructor',
  allow: 'open',
  input: z.object({ token: linkTokenSchema, ...newAccountSchema.shape }),
  run: async ({ data, caller, now }, { token, name, email, password }) => {
    await countTry(data, 'link-address', addressOf(caller));
    const link = await data.oneTimeLinks.open('first-instructor', hashToken(token), now);
    if (!link) throw linkIsOver();
    await data.rateLimits.giveBack('link-address', addressOf(caller));
    refuseWeak(password, name, email);
    const passwordHash = await hashPassword(password);
    try {
      return await data.transaction(async (inside) => {
        if (!(await inside.oneTimeLinks.use(link.id, now))) throw linkIsOver();
        const person = await inside.signIn.makePerson(
          { emailNorm: email, name, passwordHash, mayCreateCourses: true },
          now,
        );
        await inside.audit.record(
          {
            courseId: null,
            verb: 'course making allowed',
            subject: `user:${person.id}`,
            details: { by: 'first link' },
          },
          now,
          person.id,
        );
        return openSession(inside, person.id, now);
      });
    } catch (error) {
      throw isTaken(error) ? addressTaken() : error;
    }
  },
});

const days = 7;

/**
 * The link for the first instructor, printed at start; null once a person may make courses. Only its hash is stored, so
 * every start makes a new one and earlier ones stop working.
 */
export const createFirstLink = operation({
  name: 'create-first-link',
  allow: 'system',
  input: z.object({}),
  run: async ({ data, now }) => {
    if (await data.signIn.someoneMakesCourses()) return null;
    const token = newToken();
    const expiresAt = new Date(now.getTime() + days * 24 * 60 * 60 * 1000);
    await data.transaction(async (inside) => {
      await inside.oneTimeLinks.voidEarlier('first-instructor', null, now);
      await inside.oneTimeLinks.make(
        { purpose: 'first-instructor', tokenHash: hashToken(token), userId: null, createdById: null, expiresAt },
        now,
      );
    });
    return { path: `/first/${token}`, expiresAt };
  },
});

/**
 * For the command that starts the server: the address to print for the first instructor, or null when there is one.
 * @param origin e.g. https://type.school.example
 */
export async function firstLink(origin: string): Promise<{ address: string; expiresAt: Date } | null> {
  const made = await createFirstLink(systemCaller('printing the first instructor’s link at start'), {});
  return made && { address: `${origin}${made.path}`, expiresAt: made.expiresAt };
}

/** Whether this link still makes a first instructor. */
export const getFirstLink = operation({
  name: 'get-first-link',
  allow: 'open',
  input: z.object({ token: linkTokenSchema }),
  run: async ({ data, caller, now }, { token }) => {
    await countTry(data, 'link-address', addressOf(caller));
    const link = await data.oneTimeLinks.open('first-instructor', hashToken(token), now);
    if (!link) throw notFound();
    await data.rateLimits.giveBack('link-address', addressOf(caller));
    return { expiresAt: link.expiresAt };
  },
});

/** The first link, used by a person who is signed in to an existing account. */
export const acceptFirstLink = operation({
  name: 'accept-first-link',
  allow: 'account:own',
  input: z.object({ token: linkTokenSchema }),
  run: async ({ data, actor, now }, { token }) => {
    if (actor.kind !== 'person') throw notFound();
    const link = await data.oneTimeLinks.open('first-instructor', hashToken(token), now);
    if (!link) throw linkIsOver();
    await data.transaction(async (inside) => {
      if (!(await inside.oneTimeLinks.use(link.id, now))) throw linkIsOver();
      await inside.account.letMakeCourses();
      await inside.audit.record(
        {
          courseId: null,
          verb: 'course making allowed',
          subject: `user:${actor.userId}`,
          details: { by: 'first link' },
        },
        now,
      );
    });
    return {};
  },
});
