import type { Actor } from '@/lib/access/actor';
import type { Db } from './client';
import { self } from './scope';

/** The actor's own account. */
export const accountData = (actor: Actor, db: Db) => ({
  /** May this person open courses? */
  mayMakeCourses: async (): Promise<boolean> =>
    (await db.user.count({ where: { AND: [self(actor), { mayCreateCourses: true }] } })) > 0,
});
