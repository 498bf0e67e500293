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

  /** The references of these lines in frozen sets, each author’s first of a line. */
  references: async (setIds: readonly string[], specimenVersionIds: readonly string[]) => {
    if (setIds.length === 0) return [];
    const items = await db.referenceSetItem.findMany({
      where: { setId: { in: [...setIds] }, specimenVersionId: { in: [...specimenVersionIds] }, set: { exercise: { rounds: { some: roundsOfStaff(actor) } } } },
      select: { setId: true, specimenVersionId: true, authorId: true, slot: true, tracking: true, offsets: true, author: { select: { user: { select: { name: true } } } } },
      orderBy: [{ authorId: 'asc' }, { slot: 'asc' }],
    });
    const firsts = new Map(items.toReversed().map((item) => [`${item.setId} ${item.specimenVersionId} ${item.authorId}`, item]));
    return items.filter((item) => firsts.get(`${item.setId} ${item.specimenVersionId} ${item.authorId}`) === item);
  },
});
