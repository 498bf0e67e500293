import type { Actor } from './actor';
import type { Prisma } from '@/prisma/generated/sqlite/client/client';
import type { Db } from './client';
import { coursesOf, roundsOfStaff } from './scope';
import { idFrom, newId } from './ids';

/** A wall that was forgotten ends by itself. */
const lastsFor = 12 * 60 * 60 * 1000;

const whole = {
  round: {
    select: {
      id: true,
      number: true,
      title: true,
      markingStartedAt: true,
      sections: true,
      exercise: {
        select: {
          id: true,
          title: true,
          courseId: true,
          settings: true,
          course: { select: { id: true, title: true } },
        },
      },
    },
  },
} satisfies Prisma.WallInclude;
export type WallRow = Prisma.WallGetPayload<{ include: typeof whole }>;

/** A wall as it was given: its code is the scope of everything that is shown on it. */
export type ShownWall = { id: string; code: string; specimenId: string };
const shown = ({ id, code }: ShownWall): Prisma.WallWhereInput => ({ id, code, closedAt: null });

/**
 * Walls, and where phones point on them. Staff reach a wall by their course; a phone by the code, which is the scope.
 */
export const wallData = (actor: Actor, db: Db) => {
  const open = (now: Date): Prisma.WallWhereInput => ({
    closedAt: null,
    openedAt: { gt: new Date(now.getTime() - lastsFor) },
  });
  const ofStaff: Prisma.WallWhereInput = { round: roundsOfStaff(actor) };
  return {
    byId: (id: string, now: Date) =>
      db.wall.findFirst({ where: { AND: [{ id }, ofStaff, open(now)] }, include: whole }),

    /** The scope is the code itself: anyone who was shown it may point. */
    byCode: (code: string, now: Date) =>
      db.wall.findFirst({
        where: { AND: [{ code }, open(now), { round: { exercise: { removedAt: null } } }] },
        include: whole,
      }),

    openOf: (roundId: string, now: Date) =>
      db.wall.findMany({
        where: { AND: [{ roundId }, ofStaff, open(now)] },
        select: {
          id: true,
          specimenId: true,
          openedAt: true,
          openedBy: { select: { user: { select: { name: true } } } },
        },
        orderBy: { openedAt: 'asc' },
      }),

    /** How many walls this line has had in the round: asked before it is looked which are open, see `open`. */
    countOf: (roundId: string, specimenId: string) =>
      db.wall.count({ where: { AND: [{ roundId, specimenId }, ofStaff] } }),

    /**
     * The round must be one that the actor was given. The id follows from how many walls this line had before, so that
     * of two who open one at the same moment one has to look again. @throws P2002 then, and when the code is taken.
     */
    open: async (
      {
        before,
        ...wall
      }: { before: number; roundId: string; specimenId: string; code: string; settings: string; openedById: string },
      now: Date,
    ): Promise<string> => {
      const id = idFrom(`wall ${before} of ${wall.specimenId} in ${wall.roundId}`);
      await db.wall.create({ data: { id, ...wall, openedAt: now } });
      return id;
    },

    /** Changes settings that are still at `version`; returns the number of rows. */
    change: (id: string, version: number, settings: string) =>
      db.wall.updateMany({ where: { AND: [{ id, version }, ofStaff] }, data: { settings, version: { increment: 1 } } }),

    /** Ends the link, and deletes where the room pointed and which key belonged to whom. */
    close: async (id: string, now: Date): Promise<void> => {
      await db.wallPoint.deleteMany({ where: { wall: { AND: [{ id }, ofStaff] } } });
      await db.wall.updateMany({
        where: { AND: [{ id, closedAt: null }, ofStaff] },
        data: { closedAt: now, settings: '{}', version: { increment: 1 } },
      });
    },

    /** Closes those that were forgotten, as `close` does; says how many. For the server itself. */
    closeForgotten: async (now: Date): Promise<number> => {
      const forgotten: Prisma.WallWhereInput = {
        closedAt: null,
        openedAt: { lte: new Date(now.getTime() - lastsFor) },
        round: { exercise: { course: coursesOf(actor) } },
      };
      await db.wallPoint.deleteMany({ where: { wall: forgotten } });
      return (
        await db.wall.updateMany({
          where: forgotten,
          data: { closedAt: now, settings: '{}', version: { increment: 1 } },
        })
      ).count;
    },

    /** Every setting of the specimen that was sent in the round by those still in the course. */
    spacingsOf: (wall: ShownWall) =>
      db.proofItem.findMany({
        where: {
          specimenVersion: { specimenId: wall.specimenId },
          proof: { member: { removedAt: null }, round: { walls: { some: shown(wall) } } },
        },
        select: {
          id: true,
          tracking: true,
          offsets: true,
          specimenVersionId: true,
          specimenVersion: { select: { number: true, text: true } },
          proof: { select: { id: true, memberId: true, number: true, receivedAt: true } },
        },
      }),

    versionsOf: (wall: ShownWall) =>
      db.specimenVersion.findMany({
        where: { specimen: { walls: { some: shown(wall) } } },
        orderBy: { number: 'asc' },
        select: {
          id: true,
          number: true,
          size: true,
          unit: true,
          ground: true,
          packSha: true,
          pack: { select: { payload: true } },
        },
      }),

    versionNumbers: (wall: ShownWall) =>
      db.specimenVersion.findMany({
        where: { specimen: { walls: { some: shown(wall) } } },
        orderBy: { number: 'asc' },
        select: { id: true, number: true },
      }),

    /** The newest frozen references of a version, in the order they are compared in. */
    references: (wall: ShownWall, specimenVersionId: string) =>
      db.referenceSet.findFirst({
        where: { exercise: { rounds: { some: { walls: { some: shown(wall) } } } } },
        orderBy: { number: 'desc' },
        select: {
          items: {
            where: { specimenVersionId },
            orderBy: [{ authorId: 'asc' }, { slot: 'asc' }],
            select: { tracking: true, offsets: true },
          },
        },
      }),

    pointsOf: (wall: ShownWall) =>
      db.wallPoint.groupBy({ by: ['proofItemId', 'pair'], where: { wall: shown(wall) }, _count: { _all: true } }),

    /** Whether this phone points at the wall already. */
    hasPhone: async (wall: ShownWall, phone: string): Promise<boolean> =>
      (await db.wallPoint.count({ where: { phone, wall: shown(wall) } })) > 0,

    phones: (wall: ShownWall) => db.wallPoint.count({ where: { wall: shown(wall) } }),

    /**
     * Moves this phone's point, or sets its first one. @throws P2002 when the same phone sets its first twice at once:
     * again from outside.
     */
    point: async (
      wall: ShownWall,
      point: { phone: string; proofItemId: string; pair: number },
      now: Date,
    ): Promise<void> => {
      const { phone, ...at } = point;
      const { count } = await db.wallPoint.updateMany({
        where: { phone, wall: shown(wall) },
        data: { ...at, at: now },
      });
      if (count === 0) await db.wallPoint.create({ data: { id: newId(), wallId: wall.id, ...point, at: now } });
    },

    takeBack: (wall: ShownWall, phone: string) => db.wallPoint.deleteMany({ where: { phone, wall: shown(wall) } }),

    forgetPoints: (wall: ShownWall) => db.wallPoint.deleteMany({ where: { wall: { AND: [shown(wall), ofStaff] } } }),
  };
};
