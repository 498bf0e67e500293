import * as z from 'zod/mini';
import { AppError, notFound } from '@/lib/access/errors';
import { actingFor, operation } from '@/lib/access/operation';
import type { ScopedData } from '@/lib/data';
import { retryOnConflict, swapped } from '@/lib/data/retry';
import { emailSchema } from '@/shared/schemas/account';
import { passwordFits } from './password';
import { noSuchAccount } from './token';
import { countTry } from './tries';

/**
 * Erases the person who is signed in, for good. The address, and the password where there is one, say that it is meant.
 */
export const eraseAccount = operation({
  name: 'erase-account',
  allow: 'account:own',
  input: z.object({ email: emailSchema, password: z.string().check(z.maxLength(1000)) }),
  run: async ({ data, now }, { email, password }) => {
    const account = await data.account.own();
    if (!account) throw notFound();
    if (email !== account.emailNorm)
      throw refused('email', `This is not the address of the account (given: “${email}”).`);
    await countTry(data, 'own-password', account.id);
    if (account.passwordHash !== null && !(await passwordFits(account.passwordHash, password.normalize('NFKC')))) {
      throw refused('password', 'This is not your password.');
    }
    await eraseWhole(data, account.id, now);
    return {};
  },
});

const refused = (field: string, message: string) =>
  new AppError('INVALID', 'Nothing was erased.', { fields: { [field]: message } });

/** Erases a person for the server's operator, at the person's request. The address is given twice as a confirmation. */
export const erasePerson = operation({
  name: 'erase-person',
  allow: 'system',
  input: z.object({ email: emailSchema, yes: emailSchema }),
  run: async ({ data, actor, now }, { email, yes }) => {
    if (email !== yes)
      throw new AppError('INVALID', `Nothing was erased: “${yes}” is not “${email}”. Write the same address twice.`, {
        fields: { yes: 'The two addresses differ.' },
      });
    const person = await data.signIn.byEmail(email);
    if (!person) throw noSuchAccount(email);
    await eraseWhole(actingFor(actor, person.id), person.id, now);
    return { name: person.name };
  },
});

/**
 * Clears everything that names the person whose queries these are, and everything written by or about them; spacings
 * and marks stay under a membership without a name.
 * @throws AppError CONFLICT naming the courses that have no other instructor.
 */
const eraseWhole = (data: ScopedData, userId: string, now: Date): Promise<void> =>
  retryOnConflict(() =>
    data.transaction(async (inside) => {
      await handOverFirst(inside);
      await inside.erase.clearWords();
      await inside.erase.leaveCourses(now);
      await inside.erase.clearPerson(userId, now);
      await inside.audit.record({ courseId: null, verb: 'person erased', subject: `user:${userId}` }, now);
    }),
  );

async function handOverFirst(data: ScopedData): Promise<void> {
  const teaching = await data.erase.teaching();
  const alone = teaching.filter(({ _count }) => _count.members < 2).map(({ title }) => `“${title}”`);
  if (alone.length > 0)
    throw new AppError(
      'CONFLICT',
      `Nothing was erased: this is the only instructor of ${alone.join(', ')}. Make another member an instructor there first.`,
    );
  for (const { id, version } of teaching) swapped(await data.erase.takeCourseVersion(id, version), 'The course');
}
