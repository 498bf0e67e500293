import type { Actor } from '@/lib/access/actor';
import type { Prisma } from '@/prisma/generated/sqlite/client/client';
import type { Db } from './client';
import { newId } from './ids';
import { coursesOf, membersOf, staff } from './scope';

/** Notes kept for use again: one's own, and those shared in the course. */
export const stockNoteData = (actor: Actor, db: Db) => {
  const inCourse: Prisma.StockNoteWhereInput = { removedAt: null, course: coursesOf(actor, staff) };
  const own: Prisma.StockNoteWhereInput = { author: membersOf(actor, staff) };
  return {
    ofCourse: (courseId: string) =>
      db.stockNote.findMany({ where: { AND: [{ courseId }, inCourse, { OR: [own, { shared: true }] }] }, orderBy: { createdAt: 'asc' } }),

    create: async (note: { courseId: string; authorId: string; shared: boolean; fault: string; body: string; now: Date }): Promise<string> => {
      const { now, ...rest } = note;
      const id = newId();
      await db.stockNote.create({ data: { id, ...rest, createdAt: now } });
      return id;
    },

    /** Takes one's own out of use. */
    remove: async (id: string, now: Date): Promise<boolean> => {
      const { count } = await db.stockNote.updateMany({ where: { AND: [{ id }, inCourse, own] }, data: { removedAt: now, version: { increment: 1 } } });
      return count === 1;
    },
  };
};
