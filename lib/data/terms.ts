import type { Actor } from './actor';
import type { Prisma } from '@/prisma/generated/sqlite/client/client';
import type { Db } from './client';
import { coursesOf, membersOf, staff, studentRoles } from './scope';

const shown = {
  id: true,
  accommodations: true,
  sectionId: true,
  user: { select: { name: true } },
  section: { select: { name: true } },
  course: { select: { id: true, title: true, timeZone: true, settings: true } },
  extensions: { select: { roundId: true, dueAt: true } },
} satisfies Prisma.MemberSelect;

/** One student’s term: their own, or, for staff, that of a student of their course. */
export const termData = (actor: Actor, db: Db) => {
  const seen: Prisma.MemberWhereInput = {
    role: { in: [...studentRoles] },
    OR: [membersOf(actor, studentRoles), { course: coursesOf(actor, staff) }],
  };
  return {
    /** A student of a course in which the actor teaches. */
    ofStudent: (courseId: string, memberId: string) =>
      db.member.findFirst({
        where: {
          id: memberId,
          courseId,
          role: { in: [...studentRoles] },
          userId: { not: null },
          course: coursesOf(actor, staff),
        },
        select: shown,
      }),

    /** The actor’s own seat as a student. */
    own: (courseId: string) =>
      db.member.findFirst({ where: { AND: [{ courseId }, membersOf(actor, studentRoles)] }, select: shown }),

    /** What was posted in the course, with what this student sent in each round. */
    exercises: (courseId: string, memberId: string) =>
      db.exercise.findMany({
        where: {
          courseId,
          removedAt: null,
          state: { not: 'draft' },
          course: { members: { some: { AND: [{ id: memberId }, seen] } } },
        },
        orderBy: [{ position: 'asc' }, { createdAt: 'asc' }],
        select: {
          id: true,
          title: true,
          settings: true,
          publishedAt: true,
          rounds: {
            orderBy: { number: 'asc' },
            include: {
              sections: true,
              proofs: {
                where: { memberId },
                orderBy: { number: 'asc' },
                select: { id: true, number: true, receivedAt: true },
              },
              choices: { where: { memberId }, select: { proofId: true, chosenById: true } },
              releases: {
                where: { memberId },
                orderBy: { number: 'desc' },
                take: 1,
                select: { number: true, proofId: true, releasedAt: true, snapshot: true },
              },
            },
          },
        },
      }),

    /** The lines of these proofs of the student, with what was measured and compared last. */
    items: (memberId: string, proofIds: readonly string[]) =>
      db.proofItem.findMany({
        where: { proof: { id: { in: [...proofIds] }, member: { AND: [{ id: memberId }, seen] } } },
        orderBy: { specimenVersion: { specimen: { position: 'asc' } } },
        select: {
          proofId: true,
          specimenVersionId: true,
          tracking: true,
          offsets: true,
          measurements: { orderBy: { engine: 'desc' }, take: 1, select: { payload: true } },
          comparisons: {
            orderBy: [{ referenceSet: { number: 'desc' } }, { engine: 'desc' }],
            take: 1,
            select: { payload: true },
          },
          specimenVersion: {
            select: { text: true, ground: true, size: true, unit: true, pack: { select: { payload: true } } },
          },
        },
      }),

    /** Notes on these proofs, without what they say. For staff: a student reads of notes in releases only. */
    notes: (memberId: string, proofIds: readonly string[]) =>
      db.note.findMany({
        where: {
          removedAt: null,
          proofItem: {
            proof: { id: { in: [...proofIds] }, member: { id: memberId, course: coursesOf(actor, staff) } },
          },
        },
        select: { settledAt: true, proofItem: { select: { proofId: true } } },
      }),
  };
};
