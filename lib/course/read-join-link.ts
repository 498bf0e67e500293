import * as z from 'zod';
import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { hashToken } from '@/lib/account/token';
import { addressOf, takeTry } from '@/lib/account/tries';
import { linkTokenSchema } from '@/shared/schemas/account';

/** Where a join link leads. A link that has run out or was taken back is not there. */
export const readJoinLink = operation({
  name: 'read-join-link',
  allow: 'open',
  input: z.object({ token: linkTokenSchema }),
  run: async ({ data, caller, now }, { token }) => {
    await takeTry(data, 'link-address', addressOf(caller));
    const link = await data.joinLinks.byToken(hashToken(token), now);
    if (!link) throw notFound();
    return {
      title: link.course.title,
      timeZone: link.course.timeZone,
      role: link.role,
      section: link.section?.name ?? null,
      expiresAt: link.expiresAt,
    };
  },
});
