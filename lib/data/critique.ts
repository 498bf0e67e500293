import type { Actor } from './actor';
import type { Prisma } from '@/prisma/generated/sqlite/client/client';
import type { Db } from './client';
import { namedSections } from './rounds';
import { named, proofsOfStaff } from './scope';

const newest = {
  measurements: { orderBy: { engine: 'desc' }, take: 1, select: { payload: true, engine: true } },
  comparisons: {
    orderBy: [{ referenceSet: { number: 'desc' } }, { engine: 'desc' }],
    take: 1,
    select: { payload: true, engine: true, referenceSetId: true },
  },
} satisfies Prisma.ProofItemSelect;

/** Proofs and their lines as a marker looks at them. For staff only. */
export const critiqueData = (actor: Actor, db: Db) => {
  const itemsOfStaff: Prisma.ProofItemWhereInput = { proof: proofsOfStaff(actor) };
  return {
    proof: (token: string) =>
      db.proof.findFirst({
        where: { AND: [named(token), proofsOfStaff(actor)] },
        include: {
          round: { include: { sections: namedSections, exercise: { include: { course: true } } } },
          member: {
            select: {
              id: true,
              accommodations: true,
              sectionId: true,
              user: { select: { name: true } },
              section: { select: { name: true } },
              extensions: true,
            },
          },
          items: {
            select: {
              id: true,
              specimenVersionId: true,
              tracking: true,
              offsets: true,
              specimenVersion: {
                select: { specimenId: true, number: true, text: true, specimen: { select: { position: true } } },
              },
            },
          },
        },
      }),

    /** Proofs of one round with what decides how late they were. */
    proofsWithMembers: (roundId: string, proofIds: readonly string[]) =>
      db.proof.findMany({
        where: { AND: [{ roundId, id: { in: [...proofIds] } }, proofsOfStaff(actor)] },
        select: {
          id: true,
          memberId: true,
          receivedAt: true,
          member: { select: { accommodations: true, sectionId: true, extensions: { where: { roundId } } } },
        },
      }),

    /** Which comparison each line of these proofs has now, without what it says. */
    comparedWith: (proofIds: readonly string[]) =>
      db.proofItem.findMany({
        where: { AND: [{ proofId: { in: [...proofIds] } }, itemsOfStaff] },
        select: { id: true, proofId: true, comparisons: { ...newest.comparisons, select: { id: true } } },
        orderBy: { id: 'asc' },
      }),

    /** One line with its pack and what was measured, by the newest engine and references. */
    line: (proofItemId: string) =>
      db.proofItem.findFirst({
        where: { AND: [{ id: proofItemId }, itemsOfStaff] },
        select: {
          id: true,
          tracking: true,
          offsets: true,
          ...newest,
          specimenVersion: { include: { pack: { select: { payload: true } } } },
        },
      }),

    /** What was measured on all lines of these proofs. */
    measured: (proofIds: readonly string[]) =>
      db.proofItem.findMany({
        where: { AND: [{ proofId: { in: [...proofIds] } }, itemsOfStaff] },
        select: {
          id: true,
          proofId: true,
          specimenVersionId: true,
          tracking: true,
          offsets: true,
          ...newest,
          specimenVersion: { select: { text: true, specimenId: true, specimen: { select: { position: true } } } },
        },
      }),

    /** One specimen in each of these proofs, with what was measured there. */
    specimenIn: (specimenId: string, proofIds: readonly string[]) =>
      db.proofItem.findMany({
        where: { AND: [{ proofId: { in: [...proofIds] }, specimenVersion: { specimenId } }, itemsOfStaff] },
        select: { id: true, proofId: true, specimenVersionId: true, tracking: true, offsets: true, ...newest },
      }),

    /** Versions of a specimen by id, as they are read: pack, size and ground. */
    versionsById: (specimenId: string, ids: readonly string[]) =>
      db.specimenVersion.findMany({
        where: {
          id: { in: [...ids] },
          specimenId,
          specimen: { exercise: { rounds: { some: { proofs: { some: proofsOfStaff(actor) } } } } },
        },
        orderBy: { number: 'asc' },
        select: {
          id: true,
          specimenId: true,
          number: true,
          text: true,
          size: true,
          unit: true,
          ground: true,
          pack: { select: { payload: true } },
        },
      }),

    /**
     * The same member's settings of the same specimen in earlier rounds, newest first. Asked by member: a class has
     * thousands of settings of a specimen, and one member a few.
     */
    earlierItems: async (
      memberId: string,
      specimenId: string,
      exerciseId: string,
      roundNumber: number,
    ): Promise<string[]> => {
      const proofs = await db.proof.findMany({
        where: { AND: [{ memberId, round: { exerciseId, number: { lt: roundNumber } } }, proofsOfStaff(actor)] },
        orderBy: [{ round: { number: 'desc' } }, { number: 'desc' }],
        select: { items: { where: { specimenVersion: { specimenId } }, select: { id: true } } },
      });
      return proofs.flatMap(({ items }) => items.map(({ id }) => id));
    },

    /** One setting of an earlier round, to hold a later one against. */
    earlierItem: (proofItemId: string) =>
      db.proofItem.findFirst({
        where: { AND: [{ id: proofItemId }, itemsOfStaff] },
        select: {
          id: true,
          specimenVersionId: true,
          tracking: true,
          offsets: true,
          comparisons: newest.comparisons,
          proof: { select: { number: true, round: { select: { number: true } } } },
        },
      }),

    /** The pair maps of all versions of a specimen, oldest first. */
    versionsOf: (specimenId: string) =>
      db.specimenVersion.findMany({
        where: { specimenId, specimen: { exercise: { rounds: { some: { proofs: { some: proofsOfStaff(actor) } } } } } },
        orderBy: { number: 'asc' },
        select: { id: true, number: true, pairMap: true, details: true },
      }),

    /** The references that a comparison was made with, for one line. */
    references: (setId: string, specimenVersionId: string) =>
      db.referenceSetItem.findMany({
        where: {
          setId,
          specimenVersionId,
          set: { exercise: { rounds: { some: { proofs: { some: proofsOfStaff(actor) } } } } },
        },
        select: { tracking: true, offsets: true, slot: true, author: { select: { user: { select: { name: true } } } } },
        orderBy: [{ authorId: 'asc' }, { slot: 'asc' }],
      }),
  };
};
