import type { Actor } from './actor';
import type { Prisma } from '@/prisma/generated/sqlite/client/client';
import type { Db } from './client';
import { proofsOfStaff } from './scope';
import { newId } from './ids';

export type MarkEventRow = {
  markId: string;
  whoId: string;
  why: string;
  before: number | null;
  after: number | null;
  at: Date;
};

/** Marks as staff keep them; students only ever meet those of their releases. */
export const markData = (actor: Actor, db: Db) => {
  const marks: Prisma.MarkWhereInput = { task: { proof: proofsOfStaff(actor) } };
  return {
    ofTasks: (taskIds: readonly string[]) =>
      db.mark.findMany({
        where: { AND: [{ taskId: { in: [...taskIds] } }, marks] },
        select: { id: true, taskId: true, criterionVersionId: true, level: true, version: true },
      }),

    eventsOf: (taskId: string) =>
      db.markEvent.findMany({
        where: { mark: { AND: [{ taskId }, marks] } },
        orderBy: { at: 'asc' },
        include: {
          mark: { select: { criterionVersionId: true } },
          who: { select: { user: { select: { name: true } } } },
        },
      }),

    /** Every change of every mark of a proof, oldest first, with the marking it belongs to. */
    historyOf: (proofId: string) =>
      db.markEvent.findMany({
        where: { mark: { AND: [{ task: { proofId } }, marks] } },
        orderBy: [{ at: 'asc' }, { id: 'asc' }],
        include: {
          mark: {
            select: {
              criterionVersionId: true,
              criterionVersion: { select: { title: true, levels: true } },
              task: { select: { slot: true } },
            },
          },
          who: { select: { user: { select: { name: true } } } },
        },
      }),

    /** @throws P2002 when another request gave this mark first. */
    create: async (taskId: string, criterionVersionId: string, level: number | null, now: Date): Promise<string> => {
      const id = newId();
      await db.mark.create({ data: { id, taskId, criterionVersionId, level, updatedAt: now, version: 0 } });
      return id;
    },

    /** Changes a mark that is still at `version`; returns whether it did. */
    change: async (id: string, version: number, level: number | null, now: Date): Promise<boolean> => {
      const { count } = await db.mark.updateMany({
        where: { AND: [{ id, version }, marks] },
        data: { level, updatedAt: now, version: { increment: 1 } },
      });
      return count === 1;
    },

    addEvent: (event: MarkEventRow) => db.markEvent.create({ data: { id: newId(), ...event } }),
  };
};
