import * as z from 'zod';
import { operation } from '@/lib/access/operation';
import { tellPasswordChanged } from '@/lib/mail/tell-password-changed';
import { linkTokenSchema, newPasswordSchema } from '@/shared/schemas/account';
import { linkIsOver } from './link-errors';
import { openSession } from './open-session';
import { hashPassword } from './password';
import { refuseWeak } from './refuse-weak';
import { hashToken } from './token';
import { addressOf, takeTry } from './tries';

/** Sets the password of the person the link was made for, once. All their sessions end; this browser is signed in. */
export const resetPassword = operation({
  name: 'reset-password',
  allow: 'open',
  input: z.object({ token: linkTokenSchema, newPassword: newPasswordSchema }),
  run: async ({ data, caller, now }, { token, newPassword }) => {
    await takeTry(data, 'link-address', addressOf(caller));
    const link = await data.oneTimeLinks.open('reset-password', hashToken(token), now);
    const person = link?.user;
    if (!link || !person || person.erasedAt) throw linkIsOver();
    refuseWeak(newPassword, person.name, person.emailNorm, 'newPassword');
    const passwordHash = await hashPassword(newPassword);
    const opened = await data.transaction(async (inside) => {
      if (!(await inside.oneTimeLinks.use(link.id, now))) throw linkIsOver();
      await inside.account.setPassword(person.id, passwordHash);
      await inside.sessions.endAll(person.id, now);
      return openSession(inside, person.id, now);
    });
    await data.rateLimits.forget('sign-in-account', person.emailNorm);
    tellPasswordChanged(person, now);
    return opened;
  },
});
