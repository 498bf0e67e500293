import type { Actor } from './actor';
import type { Prisma } from '@/prisma/generated/sqlite/client/client';
import { canonicalJson } from '@/shared/text/canonical-json';
import type { DemonstrationSteps } from '@/shared/schemas/demonstration';
import type { Db } from './client';
import { coursesOf, instructorRoles, membersOf, self, specimenVersionsOf, staff, studentRoles } from './scope';

type NewDemonstration = {
  id: string;
  specimenVersionId: string;
  authorId: string;
  title: string;
  recorded: DemonstrationSteps;
};

const seen = {
  author: { select: { id: true, user: { select: { name: true } } } },
  specimenVersion: {
    include: {
      pack: { select: { payload: true } },
      specimen: { select: { id: true, position: true, exerciseId: true, exercise: { select: { courseId: true } } } },
    },
  },
} satisfies Prisma.DemonstrationInclude;

/** Demonstrations that exist for an actor: staff meet all of their courses', students those that are shown to them. */
function demonstrationsOf(actor: Actor): Prisma.DemonstrationWhereInput {
  const line = { AND: [specimenVersionsOf(actor)] };
  const forStaff: Prisma.DemonstrationWhereInput = {
    specimenVersion: { ...line, specimen: { exercise: { course: coursesOf(actor, staff) } } },
  };
  const forStudents: Prisma.DemonstrationWhereInput = {
    shownAt: { not: null },
    removedAt: null,
    specimenVersion: { ...line, specimen: { retiredAt: null, exercise: { course: coursesOf(actor, studentRoles) } } },
  };
  return { OR: [forStaff, forStudents] };
}

/** Those the actor may show, rename and remove: their own, and as an instructor all of the course. */
function demonstrationsToKeep(actor: Actor): Prisma.DemonstrationWhereInput {
  const line = specimenVersionsOf(actor);
  return {
    OR: [
      { author: membersOf(actor, staff), specimenVersion: line },
      { specimenVersion: { AND: [line], specimen: { exercise: { course: coursesOf(actor, instructorRoles) } } } },
    ],
  };
}

/** Settings recorded as they were made, with reasons. */
export const demonstrationData = (actor: Actor, db: Db) => ({
  /** Of an exercise, in the order of its lines, oldest first; archived ones only on request. */
  ofExercise: (exerciseId: string, removed = false) =>
    db.demonstration.findMany({
      where: {
        AND: [
          demonstrationsOf(actor),
          { specimenVersion: { specimen: { exerciseId } }, ...(removed ? {} : { removedAt: null }) },
        ],
      },
      include: seen,
      orderBy: [{ createdAt: 'asc' }, { id: 'asc' }],
    }),

  /** Shown ones of one line, any version of it, by title only. */
  shownOf: (specimenId: string) =>
    db.demonstration.findMany({
      where: {
        AND: [demonstrationsOf(actor), { shownAt: { not: null }, removedAt: null, specimenVersion: { specimenId } }],
      },
      select: { id: true, title: true },
      orderBy: [{ createdAt: 'asc' }, { id: 'asc' }],
    }),

  /** Shown ones of an exercise, by title only. */
  titlesOf: (exerciseId: string) =>
    db.demonstration.findMany({
      where: {
        AND: [
          demonstrationsOf(actor),
          { shownAt: { not: null }, removedAt: null, specimenVersion: { specimen: { exerciseId } } },
        ],
      },
      select: { id: true, title: true, specimenVersion: { select: { text: true } } },
      orderBy: [{ createdAt: 'asc' }, { id: 'asc' }],
    }),

  find: (id: string) =>
    db.demonstration.findFirst({ where: { AND: [demonstrationsOf(actor), { id }] }, include: seen }),

  mayKeep: async (id: string): Promise<boolean> =>
    (await db.demonstration.count({ where: { AND: [demonstrationsToKeep(actor), { id }] } })) > 0,

  /** The one of that id, if it is the actor's own: the same recording, sent again. */
  ownById: (id: string) =>
    db.demonstration.findFirst({
      where: { AND: [{ author: membersOf(actor, staff) }, { id, specimenVersion: specimenVersionsOf(actor) }] },
    }),

  /** @throws P2002 when there is one of that id. */
  create: ({ recorded, ...rest }: NewDemonstration, now: Date) =>
    db.demonstration.create({ data: { ...rest, steps: canonicalJson(recorded), createdAt: now } }),

  /** Compare and swap: false when the version is another one by now, or it is not the actor's to change. */
  change: async (
    id: string,
    version: number,
    patch: { title?: string; shownAt?: Date | null; removedAt?: Date | null },
  ): Promise<boolean> =>
    (
      await db.demonstration.updateMany({
        where: { AND: [demonstrationsToKeep(actor), { id, version }] },
        data: { ...patch, version: version + 1 },
      })
    ).count === 1,

  /** What the actor's own person has recorded, for their own records. */
  own: () =>
    db.demonstration.findMany({
      where: { author: { user: self(actor) } },
      select: {
        title: true,
        steps: true,
        createdAt: true,
        shownAt: true,
        removedAt: true,
        specimenVersion: { select: { text: true } },
      },
    }),
});
