import type { ScopedData } from '@/lib/data';
import { hashToken, newToken } from './token';

type For = { userId: string; createdById: string | null; hours: number };

/** A link by which one person sets a new password; earlier ones for this person stop working. */
export async function makePasswordLink(data: ScopedData, { userId, createdById, hours }: For, now: Date) {
  const token = newToken();
  const expiresAt = new Date(now.getTime() + hours * 60 * 60 * 1000);
  await data.transaction(async (inside) => {
    await inside.oneTimeLinks.voidEarlier('reset-password', userId, now);
    await inside.oneTimeLinks.make(
      { purpose: 'reset-password', tokenHash: hashToken(token), userId, createdById, expiresAt },
      now,
    );
  });
  return { path: `/reset/${token}`, expiresAt };
}
