import type { Actor } from '@/lib/access/actor';
import type { Db } from './client';
import { newId } from './ids';

export type LinkPurpose = 'first-instructor' | 'reset-password';
type NewLink = { purpose: LinkPurpose; tokenHash: string; userId: string | null; createdById: string | null; expiresAt: Date };

/** Links that work once. Whoever holds the secret is whom the link is for, so the secret's hash is the scope. */
export const oneTimeLinkData = (_actor: Actor, db: Db) => ({
  open: (purpose: LinkPurpose, tokenHash: string, now: Date) =>
    db.oneTimeLink.findFirst({
      where: { purpose, tokenHash, usedAt: null, expiresAt: { gt: now } },
      select: { id: true, expiresAt: true, user: { select: { id: true, name: true, emailNorm: true, erasedAt: true } } },
    }),

  /** True for exactly one of those who use it at the same time. */
  use: async (id: string, now: Date): Promise<boolean> =>
    (await db.oneTimeLink.updateMany({ where: { id, usedAt: null, expiresAt: { gt: now } }, data: { usedAt: now } })).count === 1,

  make: (link: NewLink, now: Date) => db.oneTimeLink.create({ data: { id: newId(), ...link, createdAt: now }, select: { id: true } }),

  /** Makes earlier links of this kind useless, so that only the newest works. */
  voidEarlier: (purpose: LinkPurpose, userId: string | null, now: Date) =>
    db.oneTimeLink.updateMany({ where: { purpose, userId, usedAt: null }, data: { usedAt: now } }),
});
