import type { Actor } from '@/lib/access/actor';
import type { Db } from './client';
import { newId } from './ids';
import { coursesOf } from './scope';

/** Parts of a course. Deleting one leaves its members in the course, in no section. */
export const sectionData = (actor: Actor, db: Db) => ({
  byId: (courseId: string, id: string) =>
    db.section.findFirst({ where: { id, courseId, course: coursesOf(actor) }, select: { id: true, name: true } }),

  /** The course must be one that `courses.byId` gave. @throws P2002 when the course has a section of this name. */
  add: (courseId: string, name: string, now: Date) =>
    db.section.create({ data: { id: newId(), courseId, name, createdAt: now }, select: { id: true } }),

  /** @throws P2002 when the course has another section of this name. */
  rename: (courseId: string, id: string, name: string) =>
    db.section.updateMany({ where: { id, courseId, course: coursesOf(actor) }, data: { name } }),

  remove: (courseId: string, id: string) => db.section.deleteMany({ where: { id, courseId, course: coursesOf(actor) } }),
});
