import type { Actor } from '@/lib/access/actor';
import { canonicalJson } from '@/shared/text/canonical-json';
import type { LateRule } from '@/shared/schemas/exercise';
import { Prisma } from '@/prisma/generated/sqlite/client/client';
import type { SecondMarking } from '@/shared/schemas/mark';
import type { Db } from './client';
import { exercisesOf, roundsOf } from './exercise-scope';
import { newId } from './ids';

export type RoundFields = {
  title: string;
  opensLocal: string | null;
  opensAt: Date | null;
  dueLocal: string | null;
  dueAt: Date | null;
  lateRule: LateRule;
};

/** Rounds of an exercise, numbered from 1 without a hole. */
export const roundData = (actor: Actor, db: Db) => {
  /** Each round with how many proofs it has, counted in an index alone (Prisma would group all proofs there are). */
  async function withProofs<Row extends { id: string }>(rounds: readonly Row[]): Promise<(Row & { proofs: number })[]> {
    if (rounds.length === 0) return [];
    const rows = await db.$queryRaw<{ id: string; proofs: unknown }[]>`
      SELECT r."id", (SELECT COUNT(*) FROM "Proof" p WHERE p."roundId" = r."id") AS "proofs" FROM "Round" r WHERE r."id" IN (${Prisma.join(rounds.map(({ id }) => id))})`;
    const counts = new Map(rows.map(({ id, proofs }) => [id, Number(proofs)]));
    return rounds.map((round) => ({ ...round, proofs: counts.get(round.id) ?? 0 }));
  }

  return {
    ofExercise: async (exerciseId: string) => {
      const rounds = await db.round.findMany({
        where: { AND: [roundsOf(actor), { exerciseId }] },
        orderBy: { number: 'asc' },
      });
      return withProofs(rounds);
    },

    find: async (id: string) => {
      const round = await db.round.findFirst({
        where: { AND: [roundsOf(actor), { id }] },
        include: { exercise: { include: { course: { select: { id: true, timeZone: true } } } } },
      });
      return round && (await withProofs([round]))[0]!;
    },

    /** @throws P2002 when another round took the number: retry from outside. */
    add: async (exerciseId: string, fields: RoundFields): Promise<string> => {
      const last = await db.round.aggregate({
        where: { AND: [roundsOf(actor), { exerciseId }] },
        _max: { number: true },
      });
      const id = newId();
      await db.round.create({
        data: { id, exerciseId, number: (last._max.number ?? 0) + 1, state: 'open', ...columns(fields) },
      });
      return id;
    },

    change: async (id: string, version: number, fields: RoundFields): Promise<boolean> => {
      const { count } = await db.round.updateMany({
        where: { AND: [roundsOf(actor), { id, version }] },
        data: { ...columns(fields), version: version + 1 },
      });
      return count === 1;
    },

    /** Says which proofs a second marker looks at, of a round that still stands at `version`. */
    setSecondMarker: async (id: string, version: number, secondMarker: SecondMarking): Promise<boolean> => {
      const { count } = await db.round.updateMany({
        where: { AND: [roundsOf(actor), { id, version }] },
        data: { secondMarker: canonicalJson(secondMarker), version: version + 1 },
      });
      return count === 1;
    },

    /** Takes the last round away, where nobody has sent anything to it. */
    remove: async (id: string, version: number): Promise<boolean> => {
      const empty: Prisma.RoundWhereInput = {
        AND: [roundsOf(actor), { id, version, proofs: { none: {} }, releases: { none: {} } }],
      };
      // Nothing ever hung on a wall of it.
      await db.wall.deleteMany({ where: { round: empty } });
      const { count } = await db.round.deleteMany({ where: empty });
      return count === 1;
    },

    /** Members' own due dates in an exercise. */
    extensions: (exerciseId: string) =>
      db.roundExtension.findMany({
        where: { round: { exercise: { AND: [exercisesOf(actor), { id: exerciseId }] } }, member: { removedAt: null } },
        include: { member: { select: { id: true, user: { select: { name: true } } } } },
        orderBy: { dueAt: 'asc' },
      }),

    /** Gives one member another due date, in place of an earlier one. @throws P2002: retry from outside. */
    extend: async (
      roundId: string,
      memberId: string,
      due: { dueLocal: string; dueAt: Date },
      now: Date,
    ): Promise<boolean> => {
      const round = await db.round.findFirst({
        where: {
          AND: [
            roundsOf(actor),
            { id: roundId, exercise: { course: { members: { some: { id: memberId, removedAt: null } } } } },
          ],
        },
        select: { id: true },
      });
      if (!round) return false;
      const { count } = await db.roundExtension.updateMany({
        where: { roundId, memberId },
        data: { ...due, version: { increment: 1 } },
      });
      if (count === 0)
        await db.roundExtension.create({ data: { id: newId(), roundId, memberId, ...due, createdAt: now } });
      return true;
    },

    /** Takes a member's own due date away; says whose it was, or null when it was not there (any more). */
    endExtension: async (id: string): Promise<{ memberId: string; roundNumber: number; courseId: string } | null> => {
      const there = await db.roundExtension.findFirst({
        where: { id, round: roundsOf(actor) },
        select: { memberId: true, round: { select: { number: true, exercise: { select: { courseId: true } } } } },
      });
      const { count } = await db.roundExtension.deleteMany({ where: { id, round: roundsOf(actor) } });
      return there && count === 1
        ? { memberId: there.memberId, roundNumber: there.round.number, courseId: there.round.exercise.courseId }
        : null;
    },
  };
};

const columns = ({ lateRule, ...rest }: RoundFields) => ({ ...rest, lateRule: canonicalJson(lateRule) });
