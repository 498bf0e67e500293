import type { Actor } from '@/lib/access/actor';
import type { Db } from './client';
import { newId } from './ids';
import { coursesOf, membersOf } from './scope';

type Settled = { title: string; timeZone: string; retainUntil: string | null };

/** Courses the actor is a member of, in one of the running operation's roles. */
export const courseData = (actor: Actor, db: Db) => ({
  own: () =>
    db.course.findMany({
      where: coursesOf(actor),
      select: {
        id: true, title: true, timeZone: true, state: true, createdAt: true,
        members: { where: membersOf(actor), select: { id: true, role: true, section: { select: { name: true } } } },
      },
    }),

  byId: (id: string) =>
    db.course.findFirst({
      where: { AND: [{ id }, coursesOf(actor)] },
      select: {
        id: true, title: true, timeZone: true, state: true, retainUntil: true, version: true, createdAt: true,
        members: { where: membersOf(actor), select: { id: true, role: true, sectionId: true } },
        sections: { select: { id: true, name: true, createdAt: true } },
      },
    }),

  make: (course: Settled, now: Date) =>
    db.course.create({ data: { id: newId(), ...course, state: 'active', createdAt: now }, select: { id: true } }),

  /** Count 1 when the course still had this version. */
  change: (id: string, version: number, change: Partial<Settled> & { state?: string; archivedAt?: Date | null }) =>
    db.course.updateMany({ where: { AND: [{ id, version }, coursesOf(actor)] }, data: { ...change, version: version + 1 } }),

  /** Whoever changes which people teach a course takes its version, so that two such changes can't pass each other. */
  takeVersion: (id: string, version: number) =>
    db.course.updateMany({ where: { AND: [{ id, version }, coursesOf(actor)] }, data: { version: version + 1 } }),
});
