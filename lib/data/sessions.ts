import type { Actor } from './actor';
import type { Db } from './client';
import { newId } from './ids';
import { self } from './scope';

const day = 24 * 60 * 60 * 1000;
const seenEvery = 5 * 60 * 1000;

/** Signed-in browsers. A row that is revoked or expired gives no access. */
export const sessionData = (actor: Actor, db: Db) => ({
  /** For a person who has just proven who they are. */
  open: (userId: string, tokenHash: string, now: Date) =>
    db.authSession.create({
      data: {
        id: newId(),
        userId,
        tokenHash,
        createdAt: now,
        lastSeenAt: now,
        expiresAt: new Date(now.getTime() + sessionDays * day),
      },
      select: { id: true },
    }),

  /** The scope is the secret itself: its holder is the person. */
  byToken: (tokenHash: string, now: Date) =>
    db.authSession.findFirst({
      where: { tokenHash, revokedAt: null, expiresAt: { gt: now }, user: { erasedAt: null } },
      select: { id: true, userId: true, lastSeenAt: true },
    }),

  /** Notes that the session is in use, at most every five minutes, so that reading pages does not mean writing rows. */
  seen: async (session: { id: string; lastSeenAt: Date }, now: Date): Promise<void> => {
    if (now.getTime() - session.lastSeenAt.getTime() < seenEvery) return;
    await db.authSession.updateMany({
      where: { id: session.id, lastSeenAt: session.lastSeenAt },
      data: { lastSeenAt: now },
    });
  },

  own: (now: Date) =>
    db.authSession.findMany({
      where: { user: self(actor), revokedAt: null, expiresAt: { gt: now } },
      select: { id: true, createdAt: true, lastSeenAt: true, expiresAt: true },
      orderBy: { lastSeenAt: 'desc' },
    }),

  endOwn: (sessionId: string, now: Date) =>
    db.authSession.updateMany({
      where: { id: sessionId, user: self(actor), revokedAt: null },
      data: { revokedAt: now },
    }),

  /** @param userId the actor's own, or a person whose password or membership just changed. */
  endAll: (userId: string, now: Date) =>
    db.authSession.updateMany({ where: { userId, revokedAt: null }, data: { revokedAt: now } }),
});

/** A browser stays signed in for this long at most, from the moment of signing in. */
export const sessionDays = 14;

/**
 * What is asked and written before the person is known. The actor is a visitor here, so the scope of each query is what
 * the visitor claims or proves: an address, another issuer's assertion, or the hash of a secret. Nothing read here may
 * be shown to the visitor before it is proven.
 */
export const signInData = (_actor: Actor, db: Db) => ({
  byEmail: (emailNorm: string) =>
    db.user.findFirst({
      where: { emailNorm, erasedAt: null },
      select: { id: true, name: true, passwordHash: true, emailNorm: true },
    }),

  byIdentity: (issuer: string, subject: string) =>
    db.identity.findFirst({ where: { issuer, subject, user: { erasedAt: null } }, select: { userId: true } }),

  /** @throws P2002 when the address, or the issuer's subject, is taken meanwhile. */
  makePerson: (
    person: { emailNorm: string; name: string; passwordHash: string | null; mayCreateCourses?: boolean },
    now: Date,
  ) => db.user.create({ data: { id: newId(), ...person, createdAt: now }, select: { id: true } }),

  addIdentity: (userId: string, issuer: string, subject: string, now: Date) =>
    db.identity.create({ data: { id: newId(), userId, issuer, subject, createdAt: now } }),

  /** Removes the password, for an account whose address was just proven by another issuer's assertion. */
  dropPassword: (userId: string) => db.user.updateMany({ where: { id: userId }, data: { passwordHash: null } }),

  someoneMakesCourses: async (): Promise<boolean> =>
    (await db.user.count({ where: { mayCreateCourses: true, erasedAt: null } })) > 0,
});
