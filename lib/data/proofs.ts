import type { Actor } from './actor';
import type { Prisma } from '@/prisma/generated/sqlite/client/client';
import { canonicalJson } from '@/shared/text/canonical-json';
import type { LineComparison, LineReport } from '@/shared/schemas/measure';
import type { Spacing } from '@/shared/schemas/spacing';
import type { Db } from './client';
import { newId } from './ids';
import { coursesOf, exercisesOf, membersOf, staff } from './scope';

export type ProofLine = {
  specimenVersionId: string;
  spacing: Spacing;
  /** Null for a line that could not be measured. */
  measure: LineReport | null;
  comparison: LineComparison | null;
};
type NewProof = {
  roundId: string;
  memberId: string;
  requestKey: string;
  reasoning: string;
  zoom: number;
  referenceSetId: string | null;
  lines: readonly ProofLine[];
  now: Date;
};

/** Proofs: a student's own, and for staff those of their courses. */
export const proofData = (actor: Actor, db: Db) => {
  const mine: Prisma.ProofWhereInput = {
    OR: [{ member: membersOf(actor) }, { round: { exercise: { removedAt: null, course: coursesOf(actor, staff) } } }],
  };
  return {
    byId: (id: string) =>
      db.proof.findFirst({
        where: { AND: [{ id }, mine] },
        include: {
          items: {
            include: {
              measurements: { take: 1, select: { id: true } },
              specimenVersion: {
                include: { pack: { select: { payload: true } }, specimen: { select: { id: true, position: true } } },
              },
            },
          },
          round: { include: { sections: true, exercise: { include: { course: true } } } },
          member: {
            select: {
              id: true,
              userId: true,
              accommodations: true,
              sectionId: true,
              user: { select: { name: true } },
              extensions: { select: { roundId: true, dueAt: true } },
            },
          },
        },
      }),

    byRequestKey: (memberId: string, requestKey: string) =>
      db.proof.findFirst({ where: { memberId, requestKey, member: membersOf(actor) }, include: { round: true } }),

    /** A member's own proofs of an exercise, newest first. */
    ofSeat: (memberId: string, exerciseId: string) =>
      db.proof.findMany({
        where: { memberId, member: membersOf(actor), round: { exerciseId } },
        orderBy: { receivedAt: 'desc' },
        select: {
          id: true,
          number: true,
          receivedAt: true,
          roundId: true,
          reasoning: true,
          round: { select: { number: true } },
        },
      }),

    /** All proofs that a member sent in a round, with what decides which one counts; `said`: it has notes or marks. */
    inRound: async (roundId: string, memberId: string) => {
      const [proofs, choice] = await Promise.all([
        db.proof.findMany({
          where: { AND: [{ roundId, memberId }, mine] },
          orderBy: { number: 'asc' },
          select: {
            id: true,
            number: true,
            receivedAt: true,
            items: { where: { notes: { some: { removedAt: null } } }, take: 1, select: { id: true } },
            markTasks: { where: { marks: { some: { level: { not: null } } } }, take: 1, select: { id: true } },
          },
        }),
        db.roundChoice.findFirst({
          where: { roundId, memberId, proof: mine },
          select: { proofId: true, chosenById: true },
        }),
      ]);
      return {
        choice,
        proofs: proofs.map(({ items, markTasks, ...proof }) => ({
          ...proof,
          said: items.length > 0 || markTasks.length > 0,
        })),
      };
    },

    /** The member's last sent setting of a specimen version. */
    lastItem: (memberId: string, specimenVersionId: string) =>
      db.proofItem.findFirst({
        where: { specimenVersionId, proof: { memberId, member: membersOf(actor) } },
        orderBy: { proof: { receivedAt: 'desc' } },
        include: { proof: { select: { number: true, receivedAt: true, round: { select: { number: true } } } } },
      }),

    settingsOf: async (exerciseId: string): Promise<string | null> =>
      (
        await db.exercise.findFirst({
          where: { AND: [{ id: exerciseId }, exercisesOf(actor)] },
          select: { settings: true },
        })
      )?.settings ?? null,

    /**
     * Lines of all proofs of an exercise that have not been compared with this set yet, by id, each with its newest
     * comparison. For staff.
     */
    itemsAfter: (exerciseId: string, setId: string, after: string, take: number) =>
      db.proofItem.findMany({
        where: {
          id: { gt: after },
          comparisons: { none: { referenceSetId: setId } },
          proof: { round: { exercise: { id: exerciseId, course: coursesOf(actor, staff) } } },
        },
        orderBy: { id: 'asc' },
        take,
        include: {
          specimenVersion: { include: { pack: { select: { payload: true } } } },
          comparisons: { orderBy: { referenceSet: { number: 'desc' } }, take: 1, select: { payload: true } },
        },
      }),

    addComparisons: async (
      referenceSetId: string,
      rows: readonly { proofItemId: string; comparison: LineComparison }[],
      now: Date,
    ): Promise<void> => {
      await db.comparison.createMany({
        data: rows.map(({ proofItemId, comparison }) => ({
          id: newId(),
          proofItemId,
          referenceSetId,
          engine: comparison.engine,
          payload: canonicalJson(comparison),
          comparedAt: now,
        })),
      });
    },

    /** @throws P2002 when the number or the request key was taken meanwhile: retry from outside. */
    send: async (proof: NewProof): Promise<{ id: string; number: number }> => {
      const { roundId, memberId, now, lines, referenceSetId } = proof;
      const last = await db.proof.findFirst({
        where: { roundId, memberId },
        orderBy: { number: 'desc' },
        select: { number: true },
      });
      const number = (last?.number ?? 0) + 1;
      const id = newId();
      const items = lines.map((line) => ({ id: newId(), proofId: id, line }));
      const writes = [
        db.proof.create({
          data: {
            id,
            roundId,
            memberId,
            number,
            requestKey: proof.requestKey,
            reasoning: proof.reasoning,
            receivedAt: now,
            zoom: proof.zoom,
          },
        }),
        db.proofItem.createMany({
          data: items.map(({ id: itemId, line }) => ({
            id: itemId,
            proofId: id,
            specimenVersionId: line.specimenVersionId,
            tracking: line.spacing.tracking,
            offsets: canonicalJson(line.spacing.offsets),
          })),
        }),
        db.measurement.createMany({
          data: items.flatMap(({ id: proofItemId, line: { measure } }) =>
            measure === null
              ? []
              : [
                  {
                    id: newId(),
                    proofItemId,
                    engine: measure.engine,
                    payload: canonicalJson(measure),
                    measuredAt: now,
                  },
                ],
          ),
        }),
        db.comparison.createMany({
          data: items.flatMap(({ id: proofItemId, line: { comparison } }) =>
            comparison === null || referenceSetId === null
              ? []
              : [
                  {
                    id: newId(),
                    proofItemId,
                    referenceSetId,
                    engine: comparison.engine,
                    payload: canonicalJson(comparison),
                    comparedAt: now,
                  },
                ],
          ),
        }),
      ];
      if ('$connect' in db) await db.$transaction(writes);
      else for (const write of writes) await write;
      return { id, number };
    },
  };
};
