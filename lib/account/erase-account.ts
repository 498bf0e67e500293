import * as z from 'zod';
import { AppError, notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import type { ScopedData } from '@/lib/data';
import { swapped } from '@/lib/data/compare-and-swap';
import { retryOnConflict } from '@/lib/data/retry';
import { emailSchema } from '@/shared/schemas/account';
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
    if (email !== account.emailNorm) throw refused('email', `This is not the address of the account (given: “${email}”).`);
    await takeTry(data, 'sign-in-account', account.emailNorm);
    if (account.passwordHash !== null && !(await passwordFits(account.passwordHash, password.normalize('NFKC')))) {
      throw refused('password', 'This is not your password.');
    }
    await retryOnConflict(() => data.transaction(async (inside) => {
      await handOverFirst(inside);
      await inside.erase.clearWords();
      await inside.erase.leaveCourses(now);
      await inside.erase.clearPerson(account.id, now);
      await inside.audit.record({ courseId: null, verb: 'person erased', subject: `user:${account.id}` }, now);
    }));
    return {};
  },
});

/** @throws AppError CONFLICT naming the courses that nobody else teaches. */
async function handOverFirst(data: ScopedData): Promise<void> {
  const teaching = await data.erase.teaching();
  const alone = teaching.filter(({ _count }) => _count.members < 2).map(({ title }) => `“${title}”`);
  if (alone.length > 0) throw new AppError('CONFLICT', `Nothing was erased: you are the only instructor of ${alone.join(', ')}. Make somebody else an instructor there first.`);
  for (const { id, version } of teaching) swapped(await data.erase.takeCourseVersion(id, version), 'The course');
}

const refused = (field: string, said: string) => new AppError('INVALID', 'Nothing was erased.', { fields: { [field]: said } });
