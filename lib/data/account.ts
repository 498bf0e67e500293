import type { Actor } from '@/lib/access/actor';
import type { Db } from './client';
import { listNameOf } from './list-name';
import { self } from './scope';

/** The actor's own account. */
export const accountData = (actor: Actor, db: Db) => ({
  /** May this person open courses? */
  mayMakeCourses: async (): Promise<boolean> =>
    (await db.user.count({ where: { AND: [self(actor), { mayCreateCourses: true }] } })) > 0,

  ownName: async (): Promise<string | null> => (await db.user.findFirst({ where: self(actor), select: { name: true } }))?.name ?? null,

  own: () =>
    db.user.findFirst({
      where: self(actor),
      include: {
        identities: { select: { issuer: true, createdAt: true } },
        members: { where: { removedAt: null }, select: { id: true, role: true, course: { select: { id: true, title: true } } } },
      },
    }),

  /** As stored; null when there is no such person any more. */
  preferences: async (): Promise<string | null> =>
    (await db.user.findFirst({ where: self(actor), select: { preferences: true } }))?.preferences ?? null,

  /** Compare and swap on the stored text: false when it was changed meanwhile. */
  changePreferences: async (before: string, after: string): Promise<boolean> =>
    (await db.user.updateMany({ where: { AND: [self(actor), { preferences: before }] }, data: { preferences: after } })).count === 1,

  /** The zone of the course the person joined last, as a first choice for the next one. */
  latestTimeZone: async (): Promise<string | undefined> =>
    (await db.member.findFirst({ where: { user: self(actor), removedAt: null }, orderBy: { joinedAt: 'desc' }, select: { course: { select: { timeZone: true } } } }))?.course.timeZone,

  rename: (name: string) => db.user.updateMany({ where: self(actor), data: { name } }),

  /** Puts the name in its place in the lists of the person's courses. */
  relist: (name: string) => db.member.updateMany({ where: { user: self(actor) }, data: { listName: listNameOf(name) } }),

  /** Only from nothing to something: a link taken up by somebody who has an account already. */
  letMakeCourses: () => db.user.updateMany({ where: self(actor), data: { mayCreateCourses: true } }),

  /** @param userId the actor's own, or the person a used-up link was for. */
  setPassword: (userId: string, passwordHash: string) =>
    db.user.updateMany({ where: { id: userId, erasedAt: null }, data: { passwordHash } }),
});
