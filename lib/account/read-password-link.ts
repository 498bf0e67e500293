import * as z from 'zod';
import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { linkTokenSchema } from '@/shared/schemas/account';
import { hashToken } from './token';
import { addressOf, takeTry } from './tries';

/** Whose password this link sets: the holder of a link handed over on paper should see that it is theirs. */
export const readPasswordLink = operation({
  name: 'read-password-link',
  allow: 'open',
  input: z.object({ token: linkTokenSchema }),
  run: async ({ data, caller, now }, { token }) => {
    await takeTry(data, 'link-address', addressOf(caller));
    const link = await data.oneTimeLinks.open('reset-password', hashToken(token), now);
    if (!link?.user || link.user.erasedAt) throw notFound();
    return { name: link.user.name, email: link.user.emailNorm, expiresAt: link.expiresAt };
  },
});
