import * as z from 'zod';
import { operation } from '@/lib/access/operation';
import type { ScopedData } from '@/lib/data';
import { env } from '@/lib/env';
import { logError } from '@/lib/http/log';
import { passwordLetter } from '@/lib/mail/letters';
import { mailIsSetUp, sendMail } from '@/lib/mail/send';
import { emailSchema } from '@/shared/schemas/account';
import { makePasswordLink } from './make-password-link';
import { addressOf, takeTry } from './tries';

/**
 * Sends a letter with a link for a new password. The answer, and the time to it, are the same whether or not there is
 * an account: everything that differs happens after it.
 */
export const requestPasswordLink = operation({
  name: 'request-password-link',
  allow: 'open',
  input: z.object({ email: emailSchema }),
  run: async ({ data, caller, now }, { email }) => {
    await takeTry(data, 'reset-address', addressOf(caller));
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
