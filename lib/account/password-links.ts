import * as z from 'zod';
import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import type { ScopedData } from '@/lib/data';
import { env } from '@/lib/env';
import { logError } from '@/lib/log';
import { passwordLetter, tellPasswordChanged } from '@/lib/mail/letters';
import { mailIsSetUp, sendMail } from '@/lib/mail/send';
import { emailSchema, linkTokenSchema, newPasswordSchema } from '@/shared/schemas/account';
import { hashPassword, refuseWeak } from './password';
import { openSession } from './sessions';
import { hashToken, linkIsOver, newToken, noSuchAccount } from './token';
import { addressOf, countTry } from './tries';
import { recordOnPerson } from './record-on-person';

/**
 * Sends a letter with a link for a new password. The answer, and the time to it, are the same whether or not there is
 * an account: everything that differs happens after it.
 */
export const requestPasswordLink = operation({
  name: 'request-password-link',
  allow: 'open',
  input: z.object({ email: emailSchema }),
  run: async ({ data, caller, now }, { email }) => {
    await countTry(data, 'reset-address', addressOf(caller));
    if (!mailIsSetUp()) return { sent: false as const };
    void writeTo(email, data, now).catch(logError);
    return { sent: true as const };
  },
});

async function writeTo(email: string, data: ScopedData, now: Date): Promise<void> {
  // Three letters an hour are enough for anyone; further ones would only annoy the owner of the address.
  if (!(await data.rateLimits.take('reset-account', email)).allowed) return;
  const person = await data.signIn.byEmail(email);
  if (!person) return;
  const { path, expiresAt } = await makePasswordLink(data, { userId: person.id, createdById: null, hours: 2 }, now);
  const expires = `${expiresAt.toISOString().slice(0, 16).replace('T', ' ')} UTC`;
  await sendMail(passwordLetter({ to: person.emailNorm, name: person.name, link: env().publicOrigin + path, expires }));
}

/** Sets the password of the person the link was made for, once. All their sessions end; this browser is signed in. */
export const resetPassword = operation({
  name: 'reset-password',
  allow: 'open',
  input: z.object({ token: linkTokenSchema, newPassword: newPasswordSchema }),
  run: async ({ data, caller, now }, { token, newPassword }) => {
    await countTry(data, 'link-address', addressOf(caller));
    const link = await data.oneTimeLinks.open('reset-password', hashToken(token), now);
    const person = link?.user;
    if (!link || !person || person.erasedAt) throw linkIsOver();
    await data.rateLimits.giveBack('link-address', addressOf(caller));
    refuseWeak(newPassword, person.name, person.emailNorm, 'newPassword');
    const passwordHash = await hashPassword(newPassword);
    const opened = await data.transaction(async (inside) => {
      if (!(await inside.oneTimeLinks.use(link.id, now))) throw linkIsOver();
      await inside.account.setPassword(person.id, passwordHash);
      await inside.oneTimeLinks.voidEarlier('reset-password', person.id, now);
      await inside.sessions.endAll(person.id, now);
      return openSession(inside, person.id, now);
    });
    await data.rateLimits.forget('sign-in-account', person.emailNorm);
    tellPasswordChanged(person, now);
    return opened;
  },
});

/** Whose password this link sets: the holder of a link on paper should see that it is theirs. */
export const getPasswordLink = operation({
  name: 'get-password-link',
  allow: 'open',
  input: z.object({ token: linkTokenSchema }),
  run: async ({ data, caller, now }, { token }) => {
    await countTry(data, 'link-address', addressOf(caller));
    const link = await data.oneTimeLinks.open('reset-password', hashToken(token), now);
    if (!link?.user || link.user.erasedAt) throw notFound();
    // A class opens its links at the same moment from one address: only guessing is counted.
    await data.rateLimits.giveBack('link-address', addressOf(caller));
    return { name: link.user.name, email: link.user.emailNorm, expiresAt: link.expiresAt };
  },
});

type For = { userId: string; createdById: string | null; hours: number };

/** A link by which one person sets a new password; earlier ones for this person stop working. */
export async function makePasswordLink(data: ScopedData, { userId, createdById, hours }: For, now: Date) {
  const token = newToken();
  const expiresAt = new Date(now.getTime() + hours * 60 * 60 * 1000);
  await data.transaction(async (inside) => {
    await inside.oneTimeLinks.voidEarlier('reset-password', userId, now);
    await inside.oneTimeLinks.make(
      { purpose: 'reset-password', tokenHash: hashToken(token), userId, createdById, expiresAt },
      now,
    );
  });
  return { path: `/reset/${token}`, expiresAt };
}

/** A link for a new password, for the server's operator to pass on: the way back in for instructors. */
export const createPasswordLinkByAddress = operation({
  name: 'create-password-link-by-address',
  allow: 'system',
  input: z.object({ email: emailSchema }),
  run: async ({ data, now }, { email }) => {
    const person = await data.signIn.byEmail(email);
    if (!person) throw noSuchAccount(email);
    const made = await makePasswordLink(data, { userId: person.id, createdById: null, hours: 24 }, now);
    await recordOnPerson(data, person.id, { verb: 'password link handed over', details: { by: 'console' } }, now);
    return { name: person.name, ...made };
  },
});
