import type { Actor } from '@/lib/access/actor';
import type { Prisma } from '@/prisma/generated/sqlite/client/client';
import type { Db } from './client';
import { proofsOfStaff } from './critique-scope';
import { newId } from './ids';
import { membersOf, staff } from './scope';

/** Proofs that a marker has put off: theirs alone, and nobody else's order. */
export const markSkipData = (actor: Actor, db: Db) => {
  const own: Prisma.MarkSkipWhereInput = { member: membersOf(actor, staff), proof: proofsOfStaff(actor) };
  return {
    /** In the order in which they were put off. */
    of: (roundId: string, memberId: string) =>
      db.markSkip.findMany({ where: { AND: [{ memberId, proof: { roundId } }, own] }, select: { proofId: true }, orderBy: [{ at: 'asc' }, { id: 'asc' }] }),

    find: (proofId: string, memberId: string) => db.markSkip.findFirst({ where: { AND: [{ proofId, memberId }, own] }, select: { id: true } }),

    /** The proof must be one that `critique.proof` gave. @throws P2002 when it was put off meanwhile: retry from outside. */
    create: (proofId: string, memberId: string, now: Date) => db.markSkip.create({ data: { id: newId(), proofId, memberId, at: now }, select: { id: true } }),

    remove: (proofId: string, memberId: string) => db.markSkip.deleteMany({ where: { AND: [{ proofId, memberId }, own] } }),
  };
};
