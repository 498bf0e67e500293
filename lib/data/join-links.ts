import type { Actor } from '@/lib/access/actor';
import type { Role } from '@/lib/access/permissions';
import type { Db } from './client';
import { newId } from './ids';
import { coursesOf } from './scope';

type NewJoinLink = { courseId: string; tokenHash: string; role: Role; sectionId: string | null; createdById: string; expiresAt: Date };

/** Links by which people join a course. Only the hash of each is kept: a link is shown once, when it is made. */
export const joinLinkData = (actor: Actor, db: Db) => ({
  /** The scope is the secret itself: whoever holds it may see which course it leads to. */
  byToken: (tokenHash: string, now: Date) =>
    db.joinLink.findFirst({
      where: { tokenHash, revokedAt: null, expiresAt: { gt: now }, course: { state: 'active' } },
      select: { id: true, courseId: true, role: true, sectionId: true, expiresAt: true, course: { select: { title: true, timeZone: true } }, section: { select: { name: true } } },
    }),

  ofCourse: (courseId: string, now: Date) =>
    db.joinLink.findMany({
      where: { courseId, course: coursesOf(actor), revokedAt: null, expiresAt: { gt: now } },
      select: { id: true, role: true, createdAt: true, expiresAt: true, section: { select: { name: true } }, createdBy: { select: { name: true } } },
    }),

  /** The course must be one that `courses.byId` gave. */
  make: (link: NewJoinLink, now: Date) => db.joinLink.create({ data: { id: newId(), ...link, createdAt: now }, select: { id: true } }),

  revoke: (courseId: string, id: string, now: Date) =>
    db.joinLink.updateMany({ where: { id, courseId, course: coursesOf(actor), revokedAt: null }, data: { revokedAt: now } }),
});
