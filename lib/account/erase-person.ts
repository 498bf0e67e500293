import * as z from 'zod/mini';
import { actingFor } from '@/lib/access/acting-for';
import { AppError } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import type { ScopedData } from '@/lib/data';
import { swapped } from '@/lib/data/compare-and-swap';
import { retryOnConflict } from '@/lib/data/retry';
import { emailSchema } from '@/shared/schemas/account';
import { nobodyHere } from './link-errors';

/** Erases a person for whoever runs the server, at the person's request. The address given twice says that it is meant. */
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
    if (!person) throw nobodyHere(email);
    await eraseWhole(actingFor(actor, person.id), person.id, now);
    return { name: person.name };
  },
});

/**
 * Clears everything that names the person whose queries these are, and everything that was written by or about them;
 * spacings and marks stay under a membership without a name. @throws AppError CONFLICT naming the courses that nobody else teaches.
 */
export const eraseWhole = (data: ScopedData, userId: string, now: Date): Promise<void> =>
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
