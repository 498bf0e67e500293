import type { Actor } from './actor';
import type { Db } from './client';
import { newId } from './ids';
import { listNameOf } from './members';
import { self } from './scope';

/** The actor's own account. */
export const accountData = (actor: Actor, db: Db) => ({
  /** May this person open courses? */
  mayMakeCourses: async (): Promise<boolean> =>
    (await db.user.count({ where: { AND: [self(actor), { mayCreateCourses: true }] } })) > 0,

  ownName: async (): Promise<string | null> =>
    (await db.user.findFirst({ where: self(actor), select: { name: true } }))?.name ?? null,

  own: () =>
    db.user.findFirst({
      where: self(actor),
      include: {
        identities: { select: { issuer: true, createdAt: true } },
        members: {
          where: { removedAt: null },
          select: { id: true, role: true, course: { select: { id: true, title: true } } },
        },
      },
    }),

  /** As stored; null when there is no such person any more. */
  preferences: async (): Promise<string | null> =>
    (await db.user.findFirst({ where: self(actor), select: { preferences: true } }))?.preferences ?? null,

  /** Compare and swap on the stored text: false when it was changed meanwhile. */
  changePreferences: async (before: string, after: string): Promise<boolean> =>
    (await db.user.updateMany({ where: { AND: [self(actor), { preferences: before }] }, data: { preferences: after } }))
      .count === 1,

  /** The zone of the course the person joined last, as a first choice for the next one. */
  latestTimeZone: async (): Promise<string | undefined> =>
    (
      await db.member.findFirst({
        where: { user: self(actor), removedAt: null },
        orderBy: { joinedAt: 'desc' },
        select: { course: { select: { timeZone: true } } },
      })
    )?.course.timeZone,

  rename: (name: string) => db.user.updateMany({ where: self(actor), data: { name } }),

  /** Puts the name in its place in the lists of the person's courses. */
  relist: (name: string) =>
    db.member.updateMany({ where: { user: self(actor) }, data: { listName: listNameOf(name) } }),

  /** Only sets it once: a link used by a person who already has an account. */
  letMakeCourses: () => db.user.updateMany({ where: self(actor), data: { mayCreateCourses: true } }),

  /** @param userId the actor's own, or the person a used-up link was for. */
  setPassword: (userId: string, passwordHash: string) =>
    db.user.updateMany({ where: { id: userId, erasedAt: null }, data: { passwordHash } }),
});

type LinkPurpose = 'first-instructor' | 'reset-password';
type NewLink = {
  purpose: LinkPurpose;
  tokenHash: string;
  userId: string | null;
  createdById: string | null;
  expiresAt: Date;
};

/** Links that work once. The holder of the secret is the person the link is for, so the secret's hash is the scope. */
export const oneTimeLinkData = (_actor: Actor, db: Db) => ({
  open: (purpose: LinkPurpose, tokenHash: string, now: Date) =>
    db.oneTimeLink.findFirst({
      where: { purpose, tokenHash, usedAt: null, expiresAt: { gt: now } },
      select: {
        id: true,
        expiresAt: true,
        user: { select: { id: true, name: true, emailNorm: true, erasedAt: true } },
      },
    }),

  /** True for exactly one of those who use it at the same time. */
  use: async (id: string, now: Date): Promise<boolean> =>
    (await db.oneTimeLink.updateMany({ where: { id, usedAt: null, expiresAt: { gt: now } }, data: { usedAt: now } }))
      .count === 1,

  make: (link: NewLink, now: Date) =>
    db.oneTimeLink.create({ data: { id: newId(), ...link, createdAt: now }, select: { id: true } }),

  /** Makes earlier links of this kind useless, so that only the newest works. */
  voidEarlier: (purpose: LinkPurpose, userId: string | null, now: Date) =>
    db.oneTimeLink.updateMany({ where: { purpose, userId, usedAt: null }, data: { usedAt: now } }),
});
