import type { Actor } from '@/lib/access/actor';
import type { Db } from './client';
import { proofsOfStaff, roundsOfStaff } from './critique-scope';

/** What a map of the class is made from. For staff only. */
export const classMapData = (actor: Actor, db: Db) => ({
  /** How one line was set in these proofs, with what was measured and compared last. */
  settings: (specimenVersionId: string, proofIds: readonly string[]) =>
    db.proofItem.findMany({
      where: { specimenVersionId, proofId: { in: [...proofIds] }, proof: proofsOfStaff(actor) },
      select: {
        proofId: true, tracking: true, offsets: true, proof: { select: { memberId: true } },
        measurements: { orderBy: { engine: 'desc' }, take: 1, select: { payload: true } },
        comparisons: { orderBy: [{ referenceSet: { number: 'desc' } }, { engine: 'desc' }], take: 1, select: { payload: true, referenceSetId: true } },
      },
    }),

  /** Packs and grounds of specimen versions that were sent in rounds the actor teaches. */
  versions: (ids: readonly string[]) =>
    db.specimenVersion.findMany({
      where: { id: { in: [...ids] }, proofItems: { some: { proof: { round: roundsOfStaff(actor) } } } },
      select: { id: true, size: true, unit: true, ground: true, pack: { select: { payload: true } } },
    }),

  /** The references of one line in a frozen set, each author’s first. */
  references: async (setId: string, specimenVersionId: string) => {
    const items = await db.referenceSetItem.findMany({
      where: { setId, specimenVersionId, set: { exercise: { rounds: { some: roundsOfStaff(actor) } } } },
      select: { authorId: true, slot: true, tracking: true, offsets: true, tolerances: true, author: { select: { user: { select: { name: true } } } } },
      orderBy: [{ authorId: 'asc' }, { slot: 'asc' }],
    });
    return items.filter(({ authorId }, index) => items.findIndex((other) => other.authorId === authorId) === index);
  },
});
