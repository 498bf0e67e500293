import * as z from 'zod';
import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { linkTokenSchema } from '@/shared/schemas/account';
import { linkIsOver } from './link-errors';
import { hashToken } from './token';

/** The first link, taken up by somebody who has an account already and is signed in. */
export const takeUpFirstLink = operation({
  name: 'take-up-first-link',
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
