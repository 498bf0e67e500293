import * as z from 'zod';
import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { linkTokenSchema } from '@/shared/schemas/account';
import { hashToken } from './token';
import { addressOf, takeTry } from './tries';

/** Whether this link still makes a first instructor. */
export const readFirstLink = operation({
  name: 'read-first-link',
  allow: 'open',
  input: z.object({ token: linkTokenSchema }),
  run: async ({ data, caller, now }, { token }) => {
    await takeTry(data, 'link-address', addressOf(caller));
    const link = await data.oneTimeLinks.open('first-instructor', hashToken(token), now);
    if (!link) throw notFound();
    return { expiresAt: link.expiresAt };
  },
});
