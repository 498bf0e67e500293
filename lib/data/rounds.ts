import { Prisma } from '@/prisma/generated/sqlite/client/client';
import type { LateRule } from '@/shared/schemas/exercise';
import type { SecondMarking } from '@/shared/schemas/mark';
import { canonicalJson } from '@/shared/text/canonical-json';
import type { Actor } from './actor';
import type { Db } from './client';
import { newId } from './ids';
import { exercisesOf, roundsOf, staff } from './scope';

export type RoundFields = {
  title: string;
  opensLocal: string | null;
  opensAt: Date | null;
  dueLocal: string | null;
  dueAt: Date | null;
  lateRule: LateRule;
};

/** The sections with something of their own in a round, as staff read them. */
export const namedSections = {
  orderBy: { sectionId: 'asc' },
  include: { section: { select: { name: true } } },
} satisfies Prisma.Round$sectionsArgs;

export type OwnDates = { opensLocal: string | null; opensAt: Date | null; dueLocal: string | null; dueAt: Date | null };

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
        include: { sections: namedSections },
      });
      return withProofs(rounds);
    },

    find: async (id: string) => {
      const round = await db.round.findFirst({
        where: { AND: [roundsOf(actor), { id }] },
        include: {
          sections: namedSections,
          exercise: { include: { course: { select: { id: true, timeZone: true } } } },
        },
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

    /** Sets which proofs get a second marker, for a round that is still at `version`. */
    setSecondMarker: async (id: string, version: number, secondMarker: SecondMarking): Promise<boolean> => {
      const { count } = await db.round.updateMany({
        where: { AND: [roundsOf(actor), { id, version }] },
        data: { secondMarker: canonicalJson(secondMarker), version: version + 1 },
      });
      return count === 1;
    },

    /** Removes the last round, if no proof has been sent to it. */
    remove: async (id: string, version: number): Promise<boolean> => {
      const empty: Prisma.RoundWhereInput = {
        AND: [roundsOf(actor), { id, version, proofs: { none: {} }, releases: { none: {} } }],
      };
      // Nothing ever hung on a wall of it.
      await db.wall.deleteMany({ where: { round: empty } });
      const { count } = await db.round.deleteMany({ where: empty });
      return count === 1;
    },

    /** All sections of a round's course by name, with how many students each has and how many had a release of it. */
    sectionsOf: async (roundId: string) => {
      const sections = await db.section.findMany({
        where: { course: { exercises: { some: { rounds: { some: { AND: [roundsOf(actor), { id: roundId }] } } } } } },
        select: {
          id: true,
          name: true,
          members: {
            where: { removedAt: null, role: 'student' },
            select: { _count: { select: { releases: { where: { roundId } } } } },
          },
        },
      });
      return sections
        .map(({ id, name, members }) => ({
          id,
          name,
          students: members.length,
          released: members.filter(({ _count }) => _count.releases > 0).length,
        }))
        .sort((one, other) => (one.name < other.name ? -1 : 1));
    },

    /**
     * Gives a section dates of its own, or none (all null: the round's hold again). `version` null: it had no row. Says
     * whether it was still so. @throws P2002 when another request gave it its first: retry from outside.
     */
    setSection: async (
      roundId: string,
      sectionId: string,
      version: number | null,
      dates: OwnDates,
    ): Promise<boolean> => {
      const where = { round: roundsOf(actor), roundId, sectionId };
      if (version !== null) {
        const { count } = await db.roundSection.updateMany({
          where: { ...where, version },
          data: { ...dates, version: { increment: 1 } },
        });
        return count === 1;
      }
      const round = await db.round.findFirst({
        where: {
          AND: [roundsOf(actor), { id: roundId, exercise: { course: { sections: { some: { id: sectionId } } } } }],
        },
        select: { markingStartedAt: true, sections: { where: { sectionId }, select: { id: true } } },
      });
      if (!round || round.sections.length > 0) return false;
      // Marking that has begun stays begun: what was fixed is not let go by a date.
      const { markingStartedAt } = round;
      await db.roundSection.create({ data: { id: newId(), roundId, sectionId, ...dates, markingStartedAt } });
      return true;
    },

    /** The section of a member of the round's course; null where they are not in it. */
    partOf: (roundId: string, memberId: string) =>
      db.member.findFirst({
        where: {
          id: memberId,
          removedAt: null,
          course: { exercises: { some: { rounds: { some: { AND: [roundsOf(actor), { id: roundId }] } } } } },
        },
        select: { sectionId: true },
      }),

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

type Round = {
  id: string;
  exerciseId: string;
  markingStartedAt: Date | null;
  sections: readonly { sectionId: string; version: number }[];
};

/**
 * `counted` changes whenever another proof may count, `queue` also when a proof gets its first task, `compared` when
 * references are frozen. `students` of the course, and how many first tasks of the round are `done`.
 */
type RoundState = { counted: string; queue: string; compared: string | null; students: number; done: number };

/** The state of a round, in a handful of counts. */
export const roundStateData = (actor: Actor, db: Db) => {
  /** Changes when a section's dates or its marking do, and when anybody moves between sections. */
  async function sectionsState({ sections }: Round, courseId: string): Promise<string> {
    const { _sum } = await db.member.aggregate({ where: { courseId }, _sum: { version: true } });
    return [...sections.map(({ sectionId, version }) => `${sectionId}:${version}`), _sum.version ?? 0].join(',');
  }

  return {
    /**
     * Asked at every look at the class and at the queue, so it is one plain statement, narrowed to the actor's courses as
     * staff like all others; every count is read from an index alone. Null when the round is not theirs.
     */
    of: async (round: Round, courseId: string): Promise<RoundState | null> => {
      if (actor.kind !== 'person') return null;
      const [row] = await db.$queryRaw<Record<string, unknown>[]>`
      SELECT
        (SELECT COUNT(*) FROM "Proof" WHERE "roundId" = ${round.id}) AS "proofs",
        (SELECT MAX("receivedAt") FROM "Proof" WHERE "roundId" = ${round.id}) AS "last",
        (SELECT COUNT(*) FROM "RoundChoice" WHERE "roundId" = ${round.id}) AS "choices",
        (SELECT MAX("chosenAt") FROM "RoundChoice" WHERE "roundId" = ${round.id}) AS "chosen",
        (SELECT SUM("version") FROM "RoundChoice" WHERE "roundId" = ${round.id}) AS "rechosen",
        (SELECT COUNT(*) FROM "Member" WHERE "courseId" = ${courseId} AND "removedAt" IS NOT NULL) AS "removed",
        (SELECT MAX("removedAt") FROM "Member" WHERE "courseId" = ${courseId} AND "removedAt" IS NOT NULL) AS "gone",
        (SELECT COUNT(*) FROM "MarkTask" WHERE "roundId" = ${round.id} AND "slot" = 'first') AS "tasks",
        (SELECT COUNT(*) FROM "MarkTask" WHERE "roundId" = ${round.id} AND "slot" = 'first' AND "state" = 'done') AS "done",
        (SELECT COUNT(*) FROM "Member" WHERE "courseId" = ${courseId} AND "role" = 'student' AND "removedAt" IS NULL) AS "students",
        (SELECT "id" FROM "ReferenceSet" WHERE "exerciseId" = ${round.exerciseId} ORDER BY "number" DESC LIMIT 1) AS "set"
      FROM "Round" r JOIN "Exercise" e ON e."id" = r."exerciseId" JOIN "Member" m ON m."courseId" = e."courseId"
      WHERE r."id" = ${round.id} AND e."courseId" = ${courseId} AND e."removedAt" IS NULL
        AND m."userId" = ${actor.userId} AND m."removedAt" IS NULL AND m."role" IN (${Prisma.join([...staff])})`;
      if (!row) return null;
      const { proofs, last, choices, chosen, rechosen, removed, gone, tasks, done, students, set } = row;
      const parts = round.sections.length === 0 ? [] : [await sectionsState(round, courseId)];
      const counted = [proofs, last, choices, chosen, rechosen, removed, gone, round.markingStartedAt, ...parts]
        .map(asText)
        .join(' ');
      return {
        counted,
        queue: `${counted} ${asText(tasks)}`,
        compared: set === null ? null : String(set),
        students: Number(students),
        done: Number(done),
      };
    },

    /**
     * How many members sent something in each of these rounds, and how many have a release. Every member's first proof
     * and first release have the number 1, so both are counted from an index alone; members removed since are subtracted,
     * starting from the members (SQLite keeps the order of a CROSS JOIN), of whom few are removed.
     */
    tallies: async (roundIds: readonly string[]): Promise<ReadonlyMap<string, { sent: number; released: number }>> => {
      if (actor.kind !== 'person' || roundIds.length === 0) return new Map();
      const rows = await db.$queryRaw<{ id: string; sent: unknown; gone: unknown; released: unknown }[]>`
      SELECT r."id",
        (SELECT COUNT(*) FROM "Proof" p WHERE p."roundId" = r."id" AND p."number" = 1) AS "sent",
        (SELECT COUNT(*) FROM "Member" g CROSS JOIN "Proof" p
          WHERE p."roundId" = r."id" AND p."memberId" = g."id" AND p."number" = 1 AND g."courseId" = e."courseId" AND g."removedAt" IS NOT NULL) AS "gone",
        (SELECT COUNT(*) FROM "Release" o WHERE o."roundId" = r."id" AND o."number" = 1) AS "released"
      FROM "Round" r JOIN "Exercise" e ON e."id" = r."exerciseId" JOIN "Member" m ON m."courseId" = e."courseId"
      WHERE r."id" IN (${Prisma.join([...roundIds])}) AND e."removedAt" IS NULL
        AND m."userId" = ${actor.userId} AND m."removedAt" IS NULL AND m."role" IN (${Prisma.join([...staff])})`;
      return new Map(
        rows.map(({ id, sent, gone, released }) => [
          id,
          { sent: Number(sent) - Number(gone), released: Number(released) },
        ]),
      );
    },
  };
};

/** The two databases give counts and instants in different types; as text they compare alike within one of them. */
const asText = (value: unknown): string =>
  value === null || value === undefined ? '-' : value instanceof Date ? value.toISOString() : String(value);
