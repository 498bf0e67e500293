import type { Prisma } from '@/prisma/generated/sqlite/client/client';
import type { Actor } from './actor';
import type { Db } from './client';
import { newId } from './ids';
import { namedSections } from './rounds';
import { coursesOf, membersOf, named, proofsOfStaff, roundsOfStaff, staff } from './scope';

export type NewTask = { proofId: string; alias: string };

const shown = {
  id: true,
  proofId: true,
  alias: true,
  state: true,
  markerId: true,
  leaseUntil: true,
  version: true,
  marker: { select: { user: { select: { name: true } } } },
} satisfies Prisma.MarkTaskSelect;

/** The queue of a round: its proofs, and whose work each of them is. For staff only. */
export const markTaskData = (actor: Actor, db: Db) => {
  const tasks: Prisma.MarkTaskWhereInput = { proof: proofsOfStaff(actor) };
  return {
    /** The actor's own membership in a course, as staff. */
    marker: (courseId: string) =>
      db.member.findFirst({
        where: { AND: [{ courseId }, membersOf(actor, staff)] },
        select: { id: true, role: true },
      }),

    round: (exerciseId: string, number: number) =>
      db.round.findFirst({
        where: { AND: [{ exerciseId, number }, roundsOfStaff(actor)] },
        include: {
          sections: namedSections,
          exercise: { include: { course: true } },
        },
      }),

    /**
     * Every proof of the round by a member who is still in the course, or by this one, small: only what decides which
     * one counts.
     */
    proofsOf: (roundId: string, memberId?: string) =>
      db.proof.findMany({
        where: { AND: [{ roundId, memberId, member: { removedAt: null } }, proofsOfStaff(actor)] },
        select: { id: true, memberId: true, number: true, receivedAt: true },
      }),

    choicesOf: (roundId: string, memberId?: string) =>
      db.roundChoice.findMany({
        where: { roundId, memberId, round: roundsOfStaff(actor) },
        select: { memberId: true, proofId: true, chosenById: true },
      }),

    /** What was marked on any proof that these members sent in a round, in one slot. */
    markedIn: (roundId: string, slot: string, memberIds: readonly string[]) =>
      db.markTask.findMany({
        where: {
          AND: [
            tasks,
            { roundId, slot, proof: { memberId: { in: [...memberIds] } }, marks: { some: { level: { not: null } } } },
          ],
        },
        select: {
          proofId: true,
          markerId: true,
          proof: { select: { memberId: true } },
          marks: { select: { criterionVersionId: true, level: true } },
        },
      }),

    /** Names and sections of a round's members, by member id. */
    peopleOf: async (memberIds: readonly string[]) => {
      const members = await db.member.findMany({
        where: { id: { in: [...memberIds] }, course: { members: { some: membersOf(actor, staff) } } },
        select: { id: true, user: { select: { name: true } }, section: { select: { name: true } } },
      });
      return new Map(
        members.map((member) => [
          member.id,
          { name: member.user?.name ?? null, section: member.section?.name ?? null },
        ]),
      );
    },

    /** All tasks of a round, small: for what is worked out once for a state of the round. A page asks `ofProofs`. */
    ofRound: (roundId: string, slot: string) =>
      db.markTask.findMany({
        where: { AND: [tasks, { slot, roundId }] },
        select: { id: true, proofId: true, alias: true },
      }),

    /**
     * What these members are called in an exercise while names are hidden: the alias of the first task that was made
     * for any of their proofs in it, in every round and to every marker.
     */
    aliasesOf: async (exerciseId: string, memberIds: readonly string[]): Promise<ReadonlyMap<string, string>> => {
      const rows = await db.markTask.findMany({
        where: { AND: [tasks, { slot: 'first', proof: { memberId: { in: [...memberIds] }, round: { exerciseId } } }] },
        orderBy: [{ createdAt: 'desc' }, { id: 'desc' }],
        select: { alias: true, proof: { select: { memberId: true } } },
      });
      // The first is written last, over those after it.
      return new Map(rows.map(({ alias, proof }) => [proof.memberId, alias]));
    },

    ofProofs: (proofIds: readonly string[], slot: string) =>
      db.markTask.findMany({ where: { AND: [tasks, { slot, proofId: { in: [...proofIds] } }] }, select: shown }),

    /** How far every marking of these proofs is, first, second and settled, with the marks it gave. */
    withMarks: (proofIds: readonly string[]) =>
      db.markTask.findMany({
        where: { AND: [tasks, { proofId: { in: [...proofIds] } }] },
        select: {
          proofId: true,
          slot: true,
          state: true,
          markerId: true,
          marks: { select: { criterionVersionId: true, level: true } },
        },
      }),

    byProof: (token: string, slot: string) =>
      db.markTask.findFirst({ where: { AND: [tasks, { slot, proof: named(token) }] }, select: shown }),

    /**
     * Open tasks of a round without a claim by another marker than `memberId`, in the order of the queue after an alias
     * ('' for the beginning).
     */
    openAfter: (roundId: string, slot: string, after: string, memberId: string, take: number, now: Date) =>
      db.markTask.findMany({
        where: {
          AND: [
            tasks,
            { roundId, slot, state: 'open', alias: { gt: after } },
            { OR: [{ leaseUntil: null }, { leaseUntil: { lte: now } }, { markerId: memberId }] },
          ],
        },
        orderBy: { alias: 'asc' },
        take,
        select: { id: true, proofId: true, alias: true },
      }),

    /** How many of these proofs have their task done. */
    doneOf: (proofIds: readonly string[], slot: string) =>
      db.markTask.count({ where: { AND: [tasks, { proofId: { in: [...proofIds] }, slot, state: 'done' }] } }),

    /** How many tasks of a round are done. */
    doneIn: (roundId: string, slot: string) => db.markTask.count({ where: { roundId, slot, state: 'done' } }),

    /** Which of these tasks are done. */
    doneAmong: (taskIds: readonly string[]) =>
      db.markTask.findMany({
        where: { AND: [tasks, { id: { in: [...taskIds] }, state: 'done' }] },
        select: { id: true },
      }),

    /** Of a round's sections that have rows of their own: which members are in them. */
    inSections: async (sectionIds: readonly string[]): Promise<ReadonlyMap<string, string>> => {
      const members = await db.member.findMany({
        where: { sectionId: { in: [...sectionIds] }, course: coursesOf(actor, staff) },
        select: { id: true, sectionId: true },
      });
      return new Map(members.flatMap(({ id, sectionId }) => (sectionId === null ? [] : [[id, sectionId] as const])));
    },

    /** @throws P2002 when another request made one of them meanwhile: retry from outside. */
    create: (roundId: string, made: readonly NewTask[], slot: string, now: Date) =>
      db.markTask.createMany({
        data: made.map(({ proofId, alias }) => ({
          id: newId(),
          roundId,
          proofId,
          slot,
          alias,
          state: 'open',
          createdAt: now,
          version: 0,
        })),
      }),

    /** Keeps a task that the marker has already for a while longer. Says whether it was theirs. */
    renew: async (taskId: string, memberId: string, leaseUntil: Date): Promise<boolean> => {
      const { count } = await db.markTask.updateMany({
        where: { AND: [{ id: taskId, markerId: memberId }, tasks] },
        data: { leaseUntil, version: { increment: 1 } },
      });
      return count === 1;
    },

    /**
     * Claims a task that is still at `version` until `leaseUntil`, unless another marker has it. Returns whether it
     * did.
     */
    take: async (
      { id, version }: { id: string; version: number },
      memberId: string,
      leaseUntil: Date,
      now: Date,
    ): Promise<boolean> => {
      const free: Prisma.MarkTaskWhereInput = {
        OR: [
          { markerId: memberId },
          { markerId: null },
          { leaseUntil: null, state: 'open' },
          { leaseUntil: { lt: now }, state: 'open' },
        ],
      };
      const { count } = await db.markTask.updateMany({
        where: { AND: [{ id, version }, tasks, free] },
        data: { markerId: memberId, leaseUntil, version: { increment: 1 } },
      });
      return count === 1;
    },

    /**
     * Takes a task's next version without changing anything else: any request that read the one before has to read
     * again.
     */
    touch: async ({ id, version }: { id: string; version: number }): Promise<boolean> => {
      const { count } = await db.markTask.updateMany({
        where: { AND: [{ id, version }, tasks] },
        data: { version: { increment: 1 } },
      });
      return count === 1;
    },

    /** In which of a proof's markings a member has a part: they hold its claim, or gave a mark in it. */
    partsOf: async (proofIds: readonly string[], memberId: string) =>
      db.markTask.findMany({
        where: {
          AND: [
            tasks,
            {
              proofId: { in: [...proofIds] },
              OR: [{ markerId: memberId }, { marks: { some: { events: { some: { whoId: memberId } } } } }],
            },
          ],
        },
        select: { proofId: true, slot: true },
      }),

    /** Writes down who settled last. */
    settledBy: (taskId: string, memberId: string, now: Date) =>
      db.markTask.updateMany({
        where: { AND: [{ id: taskId }, tasks] },
        data: { markerId: memberId, state: 'done', doneAt: now, version: { increment: 1 } },
      }),

    /** Ends the actor's hold. */
    unclaim: async (taskId: string, memberId: string): Promise<boolean> => {
      const { count } = await db.markTask.updateMany({
        where: { AND: [{ id: taskId, markerId: memberId, state: 'open' }, tasks] },
        data: { leaseUntil: null, version: { increment: 1 } },
      });
      return count === 1;
    },

    setState: async (taskId: string, memberId: string, state: 'open' | 'done', now: Date): Promise<boolean> => {
      const { count } = await db.markTask.updateMany({
        where: { AND: [{ id: taskId, markerId: memberId }, tasks] },
        data: { state, doneAt: state === 'done' ? now : null, leaseUntil: null, version: { increment: 1 } },
      });
      return count === 1;
    },

    /** From this instant on, a later proof does not change which one counts. */
    startMarking: async (roundId: string, version: number, now: Date): Promise<boolean> => {
      const { count } = await db.round.updateMany({
        where: { AND: [{ id: roundId, version, markingStartedAt: null }, roundsOfStaff(actor)] },
        data: { markingStartedAt: now, state: 'marking', version: { increment: 1 } },
      });
      return count === 1;
    },

    /** The same for one section that has its own dates. */
    startMarkingOf: async (roundId: string, sectionId: string, version: number, now: Date): Promise<boolean> => {
      const { count } = await db.roundSection.updateMany({
        where: { roundId, sectionId, version, markingStartedAt: null, round: roundsOfStaff(actor) },
        data: { markingStartedAt: now, version: { increment: 1 } },
      });
      if (count === 1)
        await db.round.updateMany({
          where: { AND: [{ id: roundId, state: 'open' }, roundsOfStaff(actor)] },
          data: { state: 'marking', version: { increment: 1 } },
        });
      return count === 1;
    },

    /**
     * Singles a proof out because a note or mark is given on it, unless one of that student's was singled out before.
     * @throws P2002 when that happened meanwhile: retry from outside.
     */
    fix: async ({
      roundId,
      memberId,
      proofId,
      now,
    }: {
      roundId: string;
      memberId: string;
      proofId: string;
      now: Date;
    }) => {
      await db.roundChoice.create({
        data: { id: newId(), roundId, memberId, proofId, chosenById: null, chosenAt: now },
      });
    },

    /** @throws P2002 when two pick at once: retry from outside. */
    choose: async (choice: { roundId: string; memberId: string; proofId: string; chosenById: string; now: Date }) => {
      const { roundId, memberId, proofId, chosenById, now } = choice;
      const { count } = await db.roundChoice.updateMany({
        where: { roundId, memberId, round: roundsOfStaff(actor) },
        data: { proofId, chosenById, chosenAt: now, version: { increment: 1 } },
      });
      if (count === 0)
        await db.roundChoice.create({ data: { id: newId(), roundId, memberId, proofId, chosenById, chosenAt: now } });
    },
  };
};

/** Proofs that a marker has put off: this changes only that marker's order. */
export const markSkipData = (actor: Actor, db: Db) => {
  const own: Prisma.MarkSkipWhereInput = { member: membersOf(actor, staff), proof: proofsOfStaff(actor) };
  return {
    /** In the order in which they were put off. */
    of: (roundId: string, memberId: string) =>
      db.markSkip.findMany({
        where: { AND: [{ memberId, proof: { roundId } }, own] },
        select: { proofId: true },
        orderBy: [{ at: 'asc' }, { id: 'asc' }],
      }),

    find: (proofId: string, memberId: string) =>
      db.markSkip.findFirst({ where: { AND: [{ proofId, memberId }, own] }, select: { id: true } }),

    /**
     * The proof must be one that `critique.proof` gave. @throws P2002 when it was put off meanwhile: retry from
     * outside.
     */
    create: (proofId: string, memberId: string, now: Date) =>
      db.markSkip.create({ data: { id: newId(), proofId, memberId, at: now }, select: { id: true } }),

    remove: (proofId: string, memberId: string) =>
      db.markSkip.deleteMany({ where: { AND: [{ proofId, memberId }, own] } }),
  };
};
