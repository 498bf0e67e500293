import type { Actor } from './actor';
import { Prisma } from '@/prisma/generated/sqlite/client/client';
import type { Db } from './client';
import { coursesOf, membersOf, proofsOfSelf, roundsOfStaff, staff, studentRoles } from './scope';
import { newId } from './ids';

export type NewRelease = {
  roundId: string;
  memberId: string;
  number: number;
  proofId: string;
  referenceSetId: string | null;
  engine: number;
  snapshot: string;
  releasedById: string;
  releasedAt: Date;
};

/** What went out. Rows are only ever added; a correction has the next number. */
export const releaseData = (actor: Actor, db: Db) => {
  const forStaff: Prisma.ReleaseWhereInput = { round: roundsOfStaff(actor) };
  return {
    /** The newest number that each of these members (all, if none are named) has in a round, without the content. */
    numbersOf: async (
      roundId: string,
      memberIds?: readonly string[],
    ): Promise<Map<string, { number: number; at: Date; proofId: string }>> => {
      if (memberIds?.length === 0) return new Map();
      const rows = await db.release.findMany({
        where: { AND: [{ roundId, ...(memberIds && { memberId: { in: [...memberIds] } }) }, forStaff] },
        orderBy: { number: 'asc' },
        select: { memberId: true, number: true, releasedAt: true, proofId: true },
      });
      return new Map(
        rows.map(({ memberId, number, releasedAt, proofId }) => [memberId, { number, at: releasedAt, proofId }]),
      );
    },

    /** Whether somebody who is still in the course sent a proof in a round of which nothing went out to them yet. */
    someWait: async (exerciseId: string): Promise<boolean> => {
      if (actor.kind !== 'person') return false;
      const rows = await db.$queryRaw<unknown[]>`
        SELECT p."id" FROM "Round" r JOIN "Exercise" e ON e."id" = r."exerciseId" JOIN "Proof" p ON p."roundId" = r."id"
        JOIN "Member" s ON s."id" = p."memberId"
        WHERE r."exerciseId" = ${exerciseId} AND s."removedAt" IS NULL
          AND NOT EXISTS (SELECT 1 FROM "Release" o WHERE o."roundId" = p."roundId" AND o."memberId" = p."memberId")
          AND EXISTS (SELECT 1 FROM "Member" m WHERE m."courseId" = e."courseId" AND m."userId" = ${actor.userId}
            AND m."removedAt" IS NULL AND m."role" IN (${Prisma.join([...staff])}))
        LIMIT 1`;
      return rows.length > 0;
    },

    /** Everything that went out for one proof, newest first, for staff. */
    ofProof: (proofId: string) =>
      db.release.findMany({ where: { AND: [{ proofId }, forStaff] }, orderBy: { number: 'desc' } }),

    numbersOfProof: (proofId: string) =>
      db.release.findMany({ where: { AND: [{ proofId }, forStaff] }, select: { number: true } }),

    /** @throws P2002 when another request released to one of them meanwhile. */
    create: (releases: readonly NewRelease[]) =>
      db.release.createMany({ data: releases.map((release) => ({ id: newId(), ...release })) }),

    markReleased: (roundId: string) =>
      db.round.updateMany({
        where: { AND: [{ id: roundId, state: { not: 'released' } }, roundsOfStaff(actor)] },
        data: { state: 'released', version: { increment: 1 } },
      }),

    /** Everything that went out for one of the actor's own proofs, newest first. */
    ownOfProof: (proofId: string) =>
      db.release.findMany({ where: { proofId, proof: proofsOfSelf(actor) }, orderBy: { number: 'desc' } }),

    /**
     * The release that holds now in the round of one of the actor's own proofs, where it was made from another proof.
     */
    ownFromAnother: (proofId: string) =>
      db.release.findFirst({
        where: {
          proofId: { not: proofId },
          proof: proofsOfSelf(actor),
          round: { proofs: { some: { AND: [{ id: proofId }, proofsOfSelf(actor)] } } },
        },
        orderBy: { number: 'desc' },
        select: { proofId: true, number: true },
      }),

    /** The actor's own drafts of the specimens of a proof, with the origin of their pairs. */
    ownDrafts: async (memberId: string, specimenIds: readonly string[]) => {
      const drafts = await db.draft.findMany({
        where: {
          memberId,
          purpose: 'work',
          specimenVersion: { specimenId: { in: [...specimenIds] } },
          member: membersOf(actor, studentRoles),
        },
        select: {
          tracking: true,
          offsets: true,
          specimenVersionId: true,
          specimenVersion: { select: { specimenId: true, number: true } },
        },
        orderBy: { specimenVersion: { number: 'asc' } },
      });
      return new Map(drafts.map((draft) => [draft.specimenVersion.specimenId, draft]));
    },

    /** Pair maps of the specimens' versions, oldest first. */
    ownVersions: (specimenIds: readonly string[]) =>
      db.specimenVersion.findMany({
        where: { specimenId: { in: [...specimenIds] }, specimen: { exercise: { course: coursesOf(actor) } } },
        orderBy: { number: 'asc' },
        select: { id: true, specimenId: true, pairMap: true },
      }),
  };
};
