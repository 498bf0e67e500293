import * as z from 'zod';
import { operation } from '@/lib/access/operation';
import { hashToken, newToken } from './token';

const days = 7;

/**
 * The link by which the first instructor comes, for the console at start; null once somebody may make courses.
 * Only its hash is kept, so every start makes a new one and earlier ones stop working.
 */
export const makeFirstLink = operation({
  name: 'make-first-link',
  allow: 'system',
  input: z.object({}),
  run: async ({ data, now }) => {
    if (await data.signIn.someoneMakesCourses()) return null;
    const token = newToken();
    const expiresAt = new Date(now.getTime() + days * 24 * 60 * 60 * 1000);
    await data.transaction(async (inside) => {
      await inside.oneTimeLinks.voidEarlier('first-instructor', null, now);
      await inside.oneTimeLinks.make(
        { purpose: 'first-instructor', tokenHash: hashToken(token), userId: null, createdById: null, expiresAt },
        now,
      );
    });
    return { path: `/first/${token}`, expiresAt };
  },
});
