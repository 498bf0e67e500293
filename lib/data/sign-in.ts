import type { Actor } from '@/lib/access/actor';
import type { Db } from './client';
import { newId } from './ids';

/**
 * What is asked and written before it is known who somebody is. The actor is a visitor here, so the scope of each query
 * is what the visitor claims or proves: an address, another issuer's word, or the hash of a secret. Nothing read here
 * may be told to the visitor before it is proven.
 */
export const signInData = (_actor: Actor, db: Db) => ({
  byEmail: (emailNorm: string) =>
    db.user.findFirst({ where: { emailNorm, erasedAt: null }, select: { id: true, name: true, passwordHash: true, emailNorm: true } }),

  byIdentity: (issuer: string, subject: string) =>
    db.identity.findFirst({ where: { issuer, subject, user: { erasedAt: null } }, select: { userId: true } }),

  /** @throws P2002 when the address, or the issuer's subject, is taken meanwhile. */
  makePerson: (person: { emailNorm: string; name: string; passwordHash: string | null; mayCreateCourses?: boolean }, now: Date) =>
    db.user.create({ data: { id: newId(), ...person, createdAt: now }, select: { id: true } }),

  addIdentity: (userId: string, issuer: string, subject: string, now: Date) =>
    db.identity.create({ data: { id: newId(), userId, issuer, subject, createdAt: now } }),

  /** Takes the password away, for an account whose address was just proven by somebody else's word. */
  dropPassword: (userId: string) => db.user.updateMany({ where: { id: userId }, data: { passwordHash: null } }),

  someoneMakesCourses: async (): Promise<boolean> =>
    (await db.user.count({ where: { mayCreateCourses: true, erasedAt: null } })) > 0,
});
