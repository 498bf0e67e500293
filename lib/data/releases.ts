import type { Actor } from '@/lib/access/actor';
import type { Prisma } from '@/prisma/generated/sqlite/client/client';
import type { Db } from './client';
import { proofsOfSelf, roundsOfStaff } from './critique-scope';
import { newId } from './ids';

export type NewRelease = {
  roundId: string; memberId: string; number: number; proofId: string; referenceSetId: string | null;
  engine: number; snapshot: string; releasedById: string; releasedAt: Date;
};

/** What went out. Rows are only ever added; a correction has the next number. */
export const releaseData = (actor: Actor, db: Db) => {
  const forStaff: Prisma.ReleaseWhereInput = { round: roundsOfStaff(actor) };
  return {
    /** The newest number of each member of a round, without what was said. */
    numbersOf: async (roundId: string): Promise<Map<string, { number: number; at: Date; proofId: string }>> => {
      const rows = await db.release.findMany({ where: { AND: [{ roundId }, forStaff] }, orderBy: { number: 'asc' }, select: { memberId: true, number: true, releasedAt: true, proofId: true } });
      return new Map(rows.map(({ memberId, number, releasedAt, proofId }) => [memberId, { number, at: releasedAt, proofId }]));
    },

    /** Everything that went out for one proof, newest first, for staff. */
    ofProof: (proofId: string) => db.release.findMany({ where: { AND: [{ proofId }, forStaff] }, orderBy: { number: 'desc' } }),

    /** @throws P2002 when somebody released to one of them meanwhile. */
    create: (releases: readonly NewRelease[]) => db.release.createMany({ data: releases.map((release) => ({ id: newId(), ...release })) }),

    markReleased: (roundId: string) =>
      db.round.updateMany({ where: { AND: [{ id: roundId, state: { not: 'released' } }, roundsOfStaff(actor)] }, data: { state: 'released', version: { increment: 1 } } }),

    /** The newest release of the round that one of the actor's own proofs was sent into; null before there is one. */
    ownForProof: (proofId: string) =>
      db.release.findFirst({
        where: { round: { proofs: { some: { AND: [{ id: proofId }, proofsOfSelf(actor)] } } }, proof: proofsOfSelf(actor) },
        orderBy: { number: 'desc' },
        include: { round: { select: { number: true, title: true, exerciseId: true } } },
      }),

    /** All of the actor's own releases pinned to a proof, newest first. */
    ownOfProof: (proofId: string) =>
      db.release.findMany({ where: { proofId, proof: proofsOfSelf(actor) }, orderBy: { number: 'desc' } }),
  };
};
