import * as z from 'zod/mini';
import { AppError, notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { tellPasswordChanged } from '@/lib/mail/letters';
import { newPasswordSchema, personNameSchema, preferencesSchema } from '@/shared/schemas/account';
import { openSession } from './sessions';
import { hashPassword, passwordFits, refuseWeak } from './password';
import { countTry } from './tries';

/** The person's own account: name, address, how they sign in, where they are signed in, which courses they are in. */
export const getAccount = operation({
  name: 'get-account',
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

/** Who is signed in, for the bar over every page; null for a visitor. */
export const getSelf = operation({
  name: 'get-self',
  allow: 'open',
  input: z.object({}),
  run: async ({ data, actor }) => {
    if (actor.kind !== 'person') return null;
    const name = await data.account.ownName();
    return name === null ? null : { name };
  },
});

export const changeName = operation({
  name: 'change-name',
  allow: 'account:own',
  input: z.object({ name: personNameSchema }),
  run: async ({ data }, { name }) => {
    await data.transaction(async (inside) => {
      await inside.account.rename(name);
      await inside.account.relist(name);
    });
    return { name };
  },
});

/**
 * Sets another password. Every session ends, and this browser gets a new one. A person who signs in through the school
 * and has no password yet sets a first one without giving an old one.
 */
export const changePassword = operation({
  name: 'change-password',
  allow: 'account:own',
  input: z.object({ currentPassword: z.string().check(z.maxLength(1000)), newPassword: newPasswordSchema }),
  run: async ({ data, now }, { currentPassword, newPassword }) => {
    const account = await data.account.own();
    if (!account) throw notFound();
    await countTry(data, 'own-password', account.id);
    if (
      account.passwordHash !== null &&
      !(await passwordFits(account.passwordHash, currentPassword.normalize('NFKC')))
    ) {
      throw new AppError('INVALID', 'Nothing was changed.', {
        fields: { currentPassword: 'This is not your present password.' },
      });
    }
    refuseWeak(newPassword, account.name, account.emailNorm, 'newPassword');
    const passwordHash = await hashPassword(newPassword);
    await data.rateLimits.forget('own-password', account.id);
    const opened = await data.transaction(async (inside) => {
      await inside.account.setPassword(account.id, passwordHash);
      await inside.oneTimeLinks.voidEarlier('reset-password', account.id, now);
      await inside.sessions.endAll(account.id, now);
      return openSession(inside, account.id, now);
    });
    tellPasswordChanged(account, now);
    return opened;
  },
});

/** Remembers that a person has been led through the guided line, or has left it out. */
export const finishGuidedLine = operation({
  name: 'finish-guided-line',
  allow: 'account:own',
  input: z.strictObject({ how: z.enum(['done', 'skipped']) }),
  run: async ({ data }, { how }) => {
    for (let attempt = 0; attempt < 5; attempt += 1) {
      const before = await data.account.preferences();
      if (before === null) throw notFound();
      const after = { ...z.parse(preferencesSchema, JSON.parse(before)), guidedLine: how };
      if (await data.account.changePreferences(before, JSON.stringify(after))) return { guidedLine: how };
    }
    throw new AppError('UNAVAILABLE', 'Your account was being changed elsewhere at the same moment. Please try again.');
  },
});
