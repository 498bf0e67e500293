import type { Actor } from '@/lib/access/actor';
import { sessionDays } from '@/lib/account/session-length';
import type { Db } from './client';
import { newId } from './ids';
import { self } from './scope';

const day = 24 * 60 * 60 * 1000;
const seenEvery = 5 * 60 * 1000;

/** Signed-in browsers. A row that is revoked or over its date lets nobody in. */
export const sessionData = (actor: Actor, db: Db) => ({
  /** For a person who has just proven who they are. */
  open: (userId: string, tokenHash: string, now: Date) =>
    db.authSession.create({
      data: { id: newId(), userId, tokenHash, createdAt: now, lastSeenAt: now, expiresAt: new Date(now.getTime() + sessionDays * day) },
      select: { id: true },
    }),

  /** The scope is the secret itself: whoever holds it is the person. */
  byToken: (tokenHash: string, now: Date) =>
    db.authSession.findFirst({
      where: { tokenHash, revokedAt: null, expiresAt: { gt: now }, user: { erasedAt: null } },
      select: { id: true, userId: true, lastSeenAt: true },
    }),

  /** Notes that the session is in use, at most every five minutes, so that reading pages does not mean writing rows. */
  seen: async (session: { id: string; lastSeenAt: Date }, now: Date): Promise<void> => {
    if (now.getTime() - session.lastSeenAt.getTime() < seenEvery) return;
    await db.authSession.updateMany({ where: { id: session.id, lastSeenAt: session.lastSeenAt }, data: { lastSeenAt: now } });
  },

  own: (now: Date) =>
    db.authSession.findMany({
      where: { user: self(actor), revokedAt: null, expiresAt: { gt: now } },
      select: { id: true, createdAt: true, lastSeenAt: true, expiresAt: true },
      orderBy: { lastSeenAt: 'desc' },
    }),

  endOwn: (sessionId: string, now: Date) =>
    db.authSession.updateMany({ where: { id: sessionId, user: self(actor), revokedAt: null }, data: { revokedAt: now } }),

  /** @param userId the actor's own, or a person whose password or membership just changed. */
  endAll: (userId: string, now: Date) => db.authSession.updateMany({ where: { userId, revokedAt: null }, data: { revokedAt: now } }),
});
