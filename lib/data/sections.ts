import type { Actor } from '@/lib/access/actor';
import type { Db } from './client';
import { newId } from './ids';
import { coursesOf, staff } from './scope';

/** Parts of a course. Deleting one leaves its members in the course, in no section. */
export const sectionData = (actor: Actor, db: Db) => ({
  byId: (courseId: string, id: string) =>
    db.section.findFirst({ where: { id, courseId, course: coursesOf(actor) }, select: { id: true, name: true } }),

  /** Members of a section who are still in the course. */
  memberIds: async (courseId: string, id: string): Promise<string[]> =>
    (await db.member.findMany({ where: { courseId, sectionId: id, removedAt: null, course: coursesOf(actor, staff) }, select: { id: true } })).map((member) => member.id),

  /** How many members of each section have sent something in a round; those in no section under null. For staff. */
  sentIn: async (courseId: string, roundId: string): Promise<{ id: string | null; name: string | null; sent: number }[]> => {
    // Most courses have no sections, and then nobody is counted.
    const sections = await db.section.findMany({ where: { courseId, course: coursesOf(actor, staff) }, select: { id: true, name: true } });
    if (sections.length === 0) return [];
    const counts = await db.member.groupBy({ by: ['sectionId'], where: { courseId, removedAt: null, course: coursesOf(actor, staff), proofs: { some: { roundId } } }, _count: true });
    const names = new Map(sections.map(({ id, name }) => [id, name]));
    return counts.map(({ sectionId, _count: sent }) => ({ id: sectionId, name: sectionId === null ? null : (names.get(sectionId) ?? null), sent }));
  },

  /** The course must be one that `courses.byId` gave. @throws P2002 when the course has a section of this name. */
  add: (courseId: string, name: string, now: Date) =>
    db.section.create({ data: { id: newId(), courseId, name, createdAt: now }, select: { id: true } }),

  /** @throws P2002 when the course has another section of this name. */
  rename: (courseId: string, id: string, name: string) =>
    db.section.updateMany({ where: { id, courseId, course: coursesOf(actor) }, data: { name } }),

  remove: (courseId: string, id: string) => db.section.deleteMany({ where: { id, courseId, course: coursesOf(actor) } }),
});
