import * as z from 'zod';
import { AppError, notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { emailSchema } from '@/shared/schemas/account';
import { eraseWhole } from './erase-person';
import { passwordFits } from './password';
import { takeTry } from './tries';

/** Erases the person who is signed in, for good. The address, and the password where there is one, say that it is meant. */
export const eraseAccount = operation({
  name: 'erase-account',
  allow: 'account:own',
  input: z.object({ email: emailSchema, password: z.string().max(1000) }),
  run: async ({ data, now }, { email, password }) => {
    const account = await data.account.own();
    if (!account) throw notFound();
    if (email !== account.emailNorm)
      throw refused('email', `This is not the address of the account (given: “${email}”).`);
    await takeTry(data, 'sign-in-account', account.emailNorm);
    if (account.passwordHash !== null && !(await passwordFits(account.passwordHash, password.normalize('NFKC')))) {
      throw refused('password', 'This is not your password.');
    }
    await eraseWhole(data, account.id, now);
    return {};
  },
});

const refused = (field: string, said: string) =>
  new AppError('INVALID', 'Nothing was erased.', { fields: { [field]: said } });
