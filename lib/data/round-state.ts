import type { Actor } from '@/lib/access/actor';
import { Prisma } from '@/prisma/generated/sqlite/client/client';
import type { Db } from './client';
import { staff } from './scope';

type Round = { id: string; exerciseId: string; markingStartedAt: Date | null };

/**
 * `counted` changes whenever another proof may count, `queue` also when a proof gets its first task, `compared` when
 * references are frozen. `students` of the course, and how many first tasks of the round are `done`.
 */
export type RoundState = { counted: string; queue: string; compared: string | null; students: number; done: number };

/** How a round stands, in a handful of counts. */
export const roundStateData = (actor: Actor, db: Db) => ({
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
    const counted = [proofs, last, choices, chosen, rechosen, removed, gone, round.markingStartedAt].map(asText).join(' ');
    return {
      counted, queue: `${counted} ${asText(tasks)}`,
      compared: set === null ? null : String(set), students: Number(students), done: Number(done),
    };
  },

  /**
   * How many members sent something in each of these rounds, and how many have a release. Everybody's first proof and
   * first release have the number 1, so both are counted in an index alone; those removed since are taken off again, asked
   * from the members (SQLite keeps the order of a CROSS JOIN), of whom few are removed.
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
    return new Map(rows.map(({ id, sent, gone, released }) => [id, { sent: Number(sent) - Number(gone), released: Number(released) }]));
  },
});

/** The two databases give counts and instants in different types; as text they compare alike within one of them. */
const asText = (value: unknown): string => (value === null || value === undefined ? '-' : value instanceof Date ? value.toISOString() : String(value));
