import * as z from 'zod';
import { AppError, notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { tellPasswordChanged } from '@/lib/mail/tell-password-changed';
import { newPasswordSchema } from '@/shared/schemas/account';
import { openSession } from './open-session';
import { hashPassword, passwordFits } from './password';
import { refuseWeak } from './refuse-weak';
import { takeTry } from './tries';

/**
 * Sets another password. Every session ends, and this browser gets a new one. Whoever signs in through the school and
 * has no password yet sets a first one without an old one.
 */
export const changePassword = operation({
  name: 'change-password',
  allow: 'account:own',
  input: z.object({ currentPassword: z.string().max(1000), newPassword: newPasswordSchema }),
  run: async ({ data, now }, { currentPassword, newPassword }) => {
    const account = await data.account.own();
    if (!account) throw notFound();
    await takeTry(data, 'sign-in-account', account.emailNorm);
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
    await data.rateLimits.forget('sign-in-account', account.emailNorm);
    const opened = await data.transaction(async (inside) => {
      await inside.account.setPassword(account.id, passwordHash);
      await inside.sessions.endAll(account.id, now);
      return openSession(inside, account.id, now);
    });
    tellPasswordChanged(account, now);
    return opened;
  },
});
